using DetailGen.Analysis.Heat;
using DetailGen.Details.Presets;
using DetailGen.Drawing.Sheets;
using DetailGen.Library.Reports;
using DetailGen.Library.Working;
using DetailGen.Physics.Moisture;

namespace DetailGen.Library.Wording;

/// <summary>All the words of the thermal sheet. The figures are those of the report.</summary>
internal static class ThermalWords
{
    internal static ThermalText Of(JunctionHeat heat, Worked worked)
    {
        var preset = worked.Preset;
        var inside = InsideAir.Of(preset);
        var (outside, room) = (heat.Conditions.Outside, heat.Conditions.Inside);
        var pressure = Saturation.Pressure(outside) + VapourExcess.At(outside, inside.Class.Excess);
        var dewPoint = Saturation.Temperature(Math.Min(pressure, Saturation.Pressure(room)))!.Value;
        var picture = ThermalPicture.Of(heat, dewPoint);
        var report = HeatReporting.Of(heat, preset, SolvedReporting.Physics(worked.Buildups));
        var step = picture.Isotherms.Count > 1 ? picture.Isotherms[1].Temperature - picture.Isotherms[0].Temperature : 1;
        var dew = Figures.OnSheet(dewPoint, 1);
        return new(
            picture,
            [.. picture.Airs.Select(air => new AirWords(air.Name, Name(air.Name), [$"{Figures.Short(air.Temperature)} °C", .. Resistances(air)]))],
            [$"{Figures.OnSheet(heat.Coldest, 1)} °C, coldest inside", $"surface; factor {Figures.OnSheet(heat.Factor.Value, 3)}"],
            $"Isotherms in °C, every {Figures.Short(step)} K.",
            $"Flux lines: {Figures.Short(picture.Flux.Each)} W/m flows between each two.",
            $"Dew point of the inside air, {dew} °C: {(heat.Coldest < dewPoint ? "inside surfaces colder than this are wet" : "no inside surface is so cold")}.",
            dew,
            "Outlines of the thermal model, which is not the drawn section: see how it departs.",
            "Coldest inside surface, heat flow films.",
            $"Coldest inside surface: beyond what is drawn, at x {Figures.OnSheet(heat.Factor.At.X, 0)}, y {Figures.OnSheet(heat.Factor.At.Y, 0)} mm from where the weather face meets finished roof level.",
            [Results(heat, preset, dew), Elements(heat), Airs(picture), Conductivities(report, worked)],
            [
                new("From the section to the model", heat.Model.Steps),
                new("Basis and cautions",
                [
                    $"{Figures.Short(room)} °C inside ({inside.TemperatureSource}) and {Figures.Short(outside)} °C outside (a choice: Ψ, L2D and factor do not hang on it). "
                        + $"Humidity class {Figures.Count(inside.Class.Number)} ({inside.ClassSource}), outside air taken as saturated: {Figures.OnSheet(100 * pressure / Saturation.Pressure(room), 0)} % inside, dew point {dew} °C.",
                    "The line of the dew point says where that air would condense if it came there; what diffuses there is for the calculation of condensation.",
                    $"{Messages.HeatStandard}.",
                    Messages.HeatCaution,
                ]),
            ]);
    }

    private static TextTable Results(JunctionHeat heat, Preset preset, string dewPoint)
    {
        string Factor(double value) => Figures.OnSheet(value, 3);
        string[] Row(string what, string value, string between = "–") => [what, value, between];
        string[] Proven(string what, Proven value) => Row(what, Figures.OnSheet(value.Value, 4), $"{Figures.OnSheet(value.Lower, 4)} to {Figures.OnSheet(value.Upper, 4)}");
        var mould = preset.FrsiFilm != "heat-flow";
        const string estimated = "estimate only";
        return new("Heat through the junction", [new([""]), new(["Value"], true), new(["Proven between"], true)],
        [
            Proven("Thermal coupling L2D, W/mK", heat.Coupling),
            Proven("Ψ, inside dimensions, W/mK", heat.PsiInternal),
            Proven("Ψ, outside dimensions, W/mK", heat.PsiExternal),
            Row($"Temperature factor, film of the mould criterion{(mould ? " (judged)" : "")}", Factor(heat.MouldFactor.Value), estimated),
            Row($"Temperature factor, films of the heat flow{(mould ? "" : " (judged)")}", Factor(heat.Factor.Value), estimated),
            Row("Coldest inside surface, °C, films of the heat flow", Figures.OnSheet(heat.Coldest, 1), estimated),
            Row("Dew point of the inside air, °C", dewPoint),
        ]);
    }

    private static TextTable Elements(JunctionHeat heat) => new(
        "Plane elements of the model", [new(["Element"]), new(["U", "W/m²K"], true), new(["Inside", "mm"], true), new(["Outside", "mm"], true)],
        [.. heat.Flanks.Select(flank => (IReadOnlyList<string>)[Capital(flank.Id), Figures.OnSheet(flank.UValue.Value, 4), Figures.OnSheet(flank.Internal, 1), Figures.OnSheet(flank.External, 1)])]);

    private static TextTable Airs(ThermalPicture picture) => new(
        "Boundary conditions", [new(["Air"]), new(["°C"], true), new(["Rs", "m²K/W"])],
        [.. picture.Airs.Select(air => (IReadOnlyList<string>)[Name(air.Name), Figures.Short(air.Temperature), Films(air)]), ["Cut-off planes and enclosed gaps", "–", "no heat passes"]]);

    private static TextTable Conductivities(JunctionReport report, Worked worked) => new(
        "Conductivities", [new(["Material"]), new(["λ of the", "model"], true), new(["λ of its", "own"], true), new(["How it is", "known"])],
        [
            .. report.Conductivities.Select(one => (IReadOnlyList<string>)
            [
                one.Own is null ? $"Air: {string.Join(", ", one.Parts.Select(part => worked.Section[part].Name.ToLowerInvariant()).Distinct(StringComparer.Ordinal))}" : Material(one, worked),
                Figures.OnSheet(one.Conductivity, 3), one.Own is { } own ? Figures.OnSheet(own, 3) : "–", $"{one.Origin}, {Known(one.Confidence)}",
            ]),
        ]);

    private static string Known(string confidence) => confidence == "memory" ? "from memory" : confidence.Replace('-', ' ');

    private static string Material(ConductivityReport one, Worked worked) => worked.Section[one.Parts[0]].Material.Name;

    private static IEnumerable<string> Resistances(AirBeside air) => air.Films.Select(film => $"Rs {Figures.OnSheet(film, 2)} m²K/W{(air.Films.Count == 1 ? "" : " " + Way(film))}");

    private static string Films(AirBeside air) => air.Name == "outside"
        ? Figures.OnSheet(air.Films[0], 2)
        : string.Join(", ", air.Films.Select(film => $"{Figures.OnSheet(film, 2)} {Way(film)}"));

    private static string Way(double film) => HeatReporting.Flow(film) switch { "horizontal" => "sideways", "upwards" => "up", var other => other == "downwards" ? "down" : other };

    private static string Name(string air) => Capital(air.Replace('-', ' '));

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
