using System.Globalization;
using DetailGen.Library.Reports;
using Spectre.Console;

namespace DetailGen.Cli.Terminal;

/// <summary>The heat through a junction in words.</summary>
internal static class HeatText
{
    internal static void Heated(TextWriter output, DetailReport detail)
    {
        if (!DetailsText.Opened(output, detail) || detail.Physics is not JunctionReport heat)
        {
            return;
        }

        Figures(output, heat);
        output.WriteLine($"  Heat flows: {string.Join(", ", heat.Flows.Select(flow => $"{flow.Key} {F(flow.Value, 3)} W/m"))}; they sum to nothing within {Small(heat.HeatBalance)} of the largest");
        output.WriteLine($"  By surface: {string.Join(", ", heat.Surfaces.Select(surface => $"{(surface.Flow == "outside" ? surface.Environment : $"{surface.Environment} {surface.Flow}")} {F(surface.Heat, 3)} W/m"))}");
        if (heat.Subdivision is { } two)
        {
            output.WriteLine($"  Comparison of two subdivisions, {two.Triangles[0]} and {two.Triangles[1]} triangles: the sum of heat flows changes by {(two.Proven ? "no more than " : "")}{F(100 * two.Change, 3)} %, {(two.Met ? "within" : "beyond")} the {F(100 * two.Limit, 0)} % of {two.Standard}");
        }

        output.WriteLine($"  Surface resistances in m²K/W: {string.Join(", ", heat.Surfaces.Select(surface => $"{surface.Environment} {surface.Flow} {F(surface.Resistance, 2)}"))}");
        output.WriteLine("  Model:");
        foreach (var step in heat.Steps)
        {
            output.WriteLine($"    - {step}");
        }

        var table = new Table { Border = TableBorder.Simple };
        table.AddColumns("material", "W/mK", "of its own", "known", "confidence", "parts");
        foreach (var one in heat.Conductivities)
        {
            table.AddRow([.. new[] { one.Material, F(one.Conductivity, 3), one.Own is { } own ? F(own, 3) : "", one.Origin, one.Confidence, string.Join(", ", one.Parts) }.Select(Markup.Escape)]);
        }

        Answers.Console(output).Write(table);
        output.WriteLine($"  {heat.Standard}.");
        output.WriteLine($"  {heat.Caution}");
        output.WriteLine();
    }

    /// <summary>What is judged by: coupling, Ψ, U-values, temperature factor, coldest surface.</summary>
    internal static void Figures(TextWriter output, JunctionReport heat)
    {
        var film = heat.Film == "heat-flow" ? heat.Factor : heat.MouldFactor;
        output.WriteLine($"  Thermal coupling L2D: {F(heat.Coupling, 4)} W/mK, proven between {Between(heat.Bounds, 4)}");
        output.WriteLine($"  Ψ, inside dimensions: {F(heat.PsiInternal, 4)} W/mK, proven between {Between(heat.PsiInternalBounds, 4)}");
        output.WriteLine($"  Ψ, outside dimensions: {F(heat.PsiExternal, 4)} W/mK, proven between {Between(heat.PsiExternalBounds, 4)}");
        foreach (var flank in heat.Flanking)
        {
            output.WriteLine($"  U of the {flank.Name} in the model, taken off for Ψ: {F(flank.UValue, 4)} W/m²K, over {F(flank.Internal, 1)} mm inside and {F(flank.External, 1)} mm outside");
        }

        foreach (var pair in heat.Pairs.Where(pair => pair.Flank is not null))
        {
            var flank = pair.Flank!;
            output.WriteLine($"  {string.Join(" to ", pair.Between)}: L2D {F(pair.Coupling, 4)} W/mK, proven between {Between(pair.Bounds, 4)}; Ψ {F(pair.PsiInternal, 4)} with inside, {F(pair.PsiExternal, 4)} with outside dimensions, after the {flank.Name} of U {F(flank.UValue, 4)} W/m²K over {F(flank.Internal, 1)} and {F(flank.External, 1)} mm");
        }

        foreach (var buildup in heat.Buildups)
        {
            output.WriteLine($"  U-value of the {buildup.Id}: {F(buildup.UValue, 4)} W/m²K away from the junction ({buildup.Remark})");
        }

        var other = heat.Film == "heat-flow" ? heat.MouldFactor : heat.Factor;
        output.WriteLine($"  Temperature factor: {F(film.Value, 3)} ({Film(heat.Film)}), least at x {F(film.X, 1)}, y {F(film.Y, 1)} mm; {Estimated(film)}");
        output.WriteLine($"  With the {(heat.Film == "heat-flow" ? Film("mould") : Film("heat-flow"))}: {F(other.Value, 3)}; {Estimated(other)}");
        output.WriteLine($"  Coldest inside surface: {F(heat.Coldest, 1)} °C at {string.Join(", ", heat.Environments.Select(air => $"{F(air.Temperature, 0)} °C {air.Name}"))}");
    }

    private static string Estimated(FactorReport factor) =>
        factor.Change is { } change ? $"estimated, not proven: the last refinement changed it by {Small(change)}" : "estimated on one mesh, not proven";

    private static string Film(string film) => film == "heat-flow" ? "film of the heat flow" : "film of the mould criterion, 0.25 m²K/W";

    private static string Small(double value) => value.ToString("0.0E+0", CultureInfo.InvariantCulture);

    private static string Between(IReadOnlyList<double> bounds, int digits) => $"{F(bounds[0], digits)} and {F(bounds[1], digits)}";

    private static string F(double value, int digits) => value.ToString("F" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
