/** The weather of an ordinary year: twelve means on a scale, their table twin, and the form that takes them. */
import { useState } from "react";
import { type ApiaryView, readWeatherForm } from "../../model/index.ts";
import { TextField, useForm } from "../parts/Form.tsx";
import { degreesInColumn, shownDegrees, useUnits } from "../parts/units.ts";
import { useCasebook } from "../store/context.ts";
import { words } from "../words.ts";

const months = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12] as const;

export function WeatherYear({ view }: { readonly view: ApiaryView }) {
  const say = words.apiaries;
  const [typing, setTyping] = useState(false);
  const means = view.weather?.monthlyMeanCelsius;
  return (
    <section aria-labelledby="h-weather">
      <h2 id="h-weather">{say.weatherHead}</h2>
      {means && view.weather ? (
        <MonthlyMeans means={means} source={view.weather.source} />
      ) : (
        <p className="q2">{say.noWeather}</p>
      )}
      {means && !typing ? (
        <p>
          <button type="button" className="act" onClick={() => setTyping(true)}>
            {say.changeWeather}
          </button>
        </p>
      ) : (
        <WeatherForm view={view} done={() => setTyping(false)} />
      )}
    </section>
  );
}

function MonthlyMeans({ means, source }: { readonly means: readonly number[]; readonly source: string }) {
  const units = useUnits();
  const say = words.apiaries;
  const shown = means.map((mean) => degreesInColumn(mean, units));
  const at = (degrees: number) => {
    const { value, unit } = shownDegrees(degrees, units);
    return say.degrees({ degrees: value, unit });
  };
  return (
    <>
      <p>{say.weatherSays({ coldest: at(Math.min(...means)), warmest: at(Math.max(...means)), source })}</p>
      <table className="months">
        <caption className="vh">{say.chart}</caption>
        <thead>
          <tr>
            {months.map((month) => (
              <th key={month} scope="col">
                <abbr title={say.month({ month })}>{say.monthShort({ month })}</abbr>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <tr>
            {months.map((month) => (
              <td key={month}>{shown[month - 1]}</td>
            ))}
          </tr>
        </tbody>
      </table>
    </>
  );
}

function WeatherForm({ view, done }: { readonly view: ApiaryView; readonly done: () => void }) {
  const { record, today } = useCasebook();
  const units = useUnits();
  const say = words.apiaries;
  const { problems, onSubmit } = useForm(
    (fields) => readWeatherForm(fields, units),
    async (data) => {
      await record([
        { kind: "weather-year-recorded", at: today, about: [view.id], replaces: view.weatherEntries, data },
      ]);
      done();
    },
  );
  const unit = units.temperature === "fahrenheit" ? say.fahrenheit : say.celsius;
  return (
    <form className="weather-form" onSubmit={onSubmit} noValidate>
      <p className="hint">{say.weatherHint}</p>
      <div className="twelve">
        {months.map((month) => (
          <TextField
            key={month}
            name={`month-${month}`}
            label={say.month({ month })}
            numeric
            unit={unit}
            problems={problems}
          />
        ))}
      </div>
      <div className="line-form">
        <TextField name="source" label={say.source} hint={say.sourceHint} problems={problems} />
        <TextField name="station" label={say.station} problems={problems} />
        <button type="submit" className="press quiet">
          {say.keepWeather}
        </button>
      </div>
    </form>
  );
}
