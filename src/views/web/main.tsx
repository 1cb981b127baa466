/** Where the page begins. */
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import "./look/tokens.css";
import "./look/parts.css";
import "./look/label.css";
import "./look/top.css";
import "./look/shell.css";
import "./look/form.css";
import "./look/field.css";
import { SessionProvider } from "./account/SessionProvider.tsx";
import { App } from "./shell/App.tsx";
import { CasebookProvider } from "./store/CasebookProvider.tsx";

const root = document.getElementById("root");
if (root)
  createRoot(root).render(
    <StrictMode>
      <SessionProvider>
        <CasebookProvider>
          <App />
        </CasebookProvider>
      </SessionProvider>
    </StrictMode>,
  );
