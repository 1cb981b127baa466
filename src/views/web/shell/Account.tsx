/** Who is signed in, in the top line; nothing where nobody needs to sign in. */
import { Link } from "wouter";
import { useSession } from "../account/SessionProvider.tsx";
import { words } from "../words.ts";

export function Account() {
  const { isGuarded, member } = useSession();
  if (!isGuarded && !member) return null;
  return (
    <Link className="act account" href={member ? "/members" : "/sign-in"}>
      {member ? member.name : words.shell.signIn}
    </Link>
  );
}
