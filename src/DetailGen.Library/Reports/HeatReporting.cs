using DetailGen.Analysis.Heat;
using DetailGen.Details.Presets;
using DetailGen.Physics.Fields;
using DetailGen.Physics.Layers;

namespace DetailGen.Library.Reports;

/// <summary>Turns the heat of a junction into the record that is printed.</summary>
internal static class HeatReporting
{
    internal static JunctionReport Of(JunctionHeat heat, Preset preset, PhysicsReport buildups) => new(
        buildups.Buildups, heat.Coupling.Value, heat.Coupling.Upper - heat.Coupling.Lower, Bounds(heat.Coupling),
        heat.Coupling.Value * (heat.Conditions.Inside - heat.Conditions.Outside),
        new(heat.Flows.ToDictionary(flow => flow.Environment, flow => flow.Flow), StringComparer.Ordinal), heat.HeatBalance,
        heat.PsiInternal.Value, Bounds(heat.PsiInternal), heat.PsiExternal.Value, Bounds(heat.PsiExternal),
        [.. heat.Flanks.Select(Flank)], [.. heat.Pairs.Select(Pair)],
        Factor(heat.Factor), Factor(heat.MouldFactor), heat.Coldest,
        heat.Subdivision is { } two ? new([two.Coarse, two.Fine], two.Change, Subdivision.Limit, two.Met, two.IsProven, Messages.SubdivisionStandard) : null, heat.Unknowns, preset.FrsiFilm, Messages.HeatStandard,
        [.. Used(heat).Select(line => line.Environment!).Distinct().Select(air => new EnvironmentReport(air.Name, Side(air.Side), air.Temperature))],
        Surfaces(heat),
        [.. heat.Model.Solids.Select(solid => Conductivity(solid, preset))],
        heat.Model.Steps, Messages.HeatCaution);

    private static FlankReport Flank(FlankHeat flank) => new(flank.Id, flank.UValue.Value, Bounds(flank.UValue), ReportUnits.Thousandth(flank.Internal), ReportUnits.Thousandth(flank.External));

    private static PairReport Pair(PairHeat pair) => new(
        [pair.Warm, pair.Cold], pair.Coupling.Value, Bounds(pair.Coupling), pair.PsiInternal.Value, Bounds(pair.PsiInternal), pair.PsiExternal.Value, Bounds(pair.PsiExternal),
        pair.Flank is { } flank ? Flank(flank) : null);

    private static IEnumerable<FieldBoundary> Used(JunctionHeat heat) => heat.Model.Case.Boundary.Where(line => line.Environment is not null);

    private static SurfaceReport[] Surfaces(JunctionHeat heat) =>
    [
        .. heat.Model.Case.Boundary.Zip(heat.FlowsByLine).Where(line => line.First.Environment is not null)
            .GroupBy(line => (line.First.Environment!.Name, line.First.Film))
            .Select(film => new SurfaceReport(film.Key.Name, Flow(film.Key.Film), film.Key.Film, film.Sum(line => line.Second))),
    ];

    private static ConductivityReport Conductivity(ThermalSolid solid, Preset preset)
    {
        var air = solid.Material.Conductivity is null;
        var filled = preset.Slots.FirstOrDefault(slot => slot.Material.Id == solid.Material.Id);
        return new(
            solid.Material.Id, solid.Parts, Math.Round(solid.Conductivity, 6), solid.Material.Conductivity, air ? "calculated" : solid.Material.Origin,
            air ? "memory" : filled?.Filling.Confidence.Conductivity ?? "");
    }

    /// <summary>Which way heat goes through an inside film; <c>outside</c> for the others.</summary>
    /// <param name="film">As <see cref="SurfaceResistance"/> gives it, m²·K/W.</param>
    internal static string Flow(double film) => Ways.FirstOrDefault(way => SurfaceResistance.Inside(way.Flow) == film).Word ?? "outside";

    private static readonly (Flow Flow, string Word)[] Ways =
        [(Physics.Layers.Flow.Horizontal, "horizontal"), (Physics.Layers.Flow.Upwards, "upwards"), (Physics.Layers.Flow.Downwards, "downwards")];

    private static string Side(FieldSide side) => side == FieldSide.Internal ? "internal" : "external";

    private static FactorReport Factor(TemperatureFactor factor) => new(factor.Value, ReportUnits.Thousandth(factor.At.X), ReportUnits.Thousandth(factor.At.Y), factor.Change, Proven: false);

    private static double[] Bounds(Proven value) => [value.Lower, value.Upper];
}
