using DetailGen.Analysis.Heat;
using DetailGen.Details.Solving;
using DetailGen.Sections;
using DetailGen.Testing;

namespace DetailGen.Details.Tests.Junctions;

/// <summary>Thermal models of whatever can be built.</summary>
public class ThermalModelTests
{
    /// <summary>So coarse that a field costs little; its bounds are proven all the same.</summary>
    private static readonly HeatConditions Coarse = new(WantedError: 0.1);

    public static TheoryData<string, string, string> Pairings => ShippedJunctionTests.Pairings;

    [Fact]
    public void Whatever_the_solver_allows_has_a_field() => AnyDetail.Presets.Always(
        preset =>
        {
            if (Shipped.Solve(preset) is not Solution.Solved sizes)
            {
                return;
            }

            var model = ThermalModelling.Of(SectionBuilder.Build(sizes), Coarse);
            var covered = Region.Union(model.Solids.Select(solid => solid.Region));
            Assert.Equal(covered.Area, model.Solids.Sum(solid => solid.Region.Area), 20.0); // mm²: the grid of 0.001 mm along 20 m of edges
            Assert.Single(covered.Pieces);
            Holds(JunctionHeat.Of(model, Coarse));
        },
        cases: 30, print: AnyDetail.Told);

    [Fact]
    public void The_joint_that_a_coping_leaves_open_over_insulation_is_outdoor_air_and_its_strip_stands_in_it()
    {
        var section = Shipped.Build("parapet", "solid-masonry-insulated", "warm-concrete-deck");
        Assert.Contains(section.Parts, part => part.Id == "coping.joint");
        var model = ThermalModelling.Of(section, Coarse);
        Assert.DoesNotContain(model.Solids, solid => solid.Parts.Any(id => id.StartsWith("coping.joint", StringComparison.Ordinal) || id.StartsWith("coping.strip", StringComparison.Ordinal)));
        Assert.Contains(model.Steps, step => step.Contains("open joint under the coping", StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>Nothing of the build-up is lost on the way: what the schedule adds up is what the cut-off plane of the model crosses.</summary>
    [Theory]
    [MemberData(nameof(Pairings))]
    public void Away_from_the_junction_an_element_passes_what_its_schedule_says(string junction, string wall, string roof)
    {
        var section = Shipped.Build(junction, wall, roof);
        var heat = JunctionHeat.Of(ThermalModelling.Of(section, Coarse), Coarse);
        foreach (var buildup in section.Buildups)
        {
            // where nothing crosses a layer they differ by thin sheets alone, which a board or screed takes the place of; dabs and joists cross one of 0.16 to 0.17 m²K/W
            var flank = heat.Flanks.Single(flank => flank.Id == buildup.Id);
            var scheduled = BuildupResistance.Of(buildup);
            var slack = buildup.Layers.Any(layer => layer.Kind is LayerKind.Bridged or LayerKind.Air) ? 0.1 : 0.006;
            Assert.InRange(1 / flank.UValue.Value, scheduled.Total - slack, scheduled.Total + slack);
        }
    }

    [Theory]
    [MemberData(nameof(Pairings))]
    public void Thicker_roof_insulation_lowers_the_roofs_u_and_what_the_junction_couples(string junction, string wall, string roof)
    {
        var before = double.PositiveInfinity;
        foreach (var thickness in (int[])[120, 160, 200])
        {
            var heat = JunctionHeat.Of(ThermalModelling.Of(Shipped.Build(junction, wall, roof, $"roof.insulation={thickness} mm"), Coarse), Coarse);
            var u = heat.Flanks.Single(flank => flank.Id == "roof").UValue;
            Assert.True(u.Upper < before, $"{thickness} mm");
            before = u.Lower;
        }
    }

    [Theory]
    [MemberData(nameof(Pairings))]
    public void A_foil_however_thin_leaves_no_slit_behind(string junction, string wall, string roof)
    {
        var usual = JunctionHeat.Of(ThermalModelling.Of(Shipped.Build(junction, wall, roof), Coarse), Coarse).Coupling;
        foreach (var thickness in (string[])["0.1", "0.105", "0.2"])
        {
            var model = ThermalModelling.Of(Shipped.Build(junction, wall, roof, $"roof.vcl={thickness} mm"), Coarse);
            Assert.Single(Region.Union(model.Solids.Select(solid => solid.Region)).Pieces);
            Assert.InRange(JunctionHeat.Of(model, Coarse).Coupling.Value, usual.Lower * 0.98, usual.Upper * 1.02);
        }
    }

    [Theory]
    [InlineData("along")]
    [InlineData("across")]
    public void Joists_are_in_the_plane_or_count_by_their_share(string joists)
    {
        var section = Shipped.Build("parapet", "cavity-masonry", "warm-timber-deck", $"roof.joists={joists}");
        var model = ThermalModelling.Of(section, Coarse);
        var timber = model.Solids.Where(solid => solid.Parts.Any(part => part.StartsWith("roof.joist", StringComparison.Ordinal))).ToArray();
        if (joists == "along")
        {
            Assert.Equal(0.13, Assert.Single(timber).Conductivity, 1e-9);
            Assert.NotNull(model.Flanks.Single(flank => flank.Id == "roof").Bay);
            return;
        }

        // 47 at 400 mm: 0.1175 of softwood (0.13), the rest air of the depth of joist and firring over 0.16 m²K/W, and the leaf (1.13) where they bear
        var depth = section["roof.joist.1"].Region.Bounds.Height + section["roof.firring.1"].Region.Bounds.Top - section["roof.firring.1"].Region.Bounds.Bottom;
        Assert.Equal(2, timber.Length);
        Assert.Contains(timber, solid => Math.Abs(solid.Conductivity - ((0.1175 * 0.13) + (0.8825 * 1.13))) < 1e-6);
        Assert.Contains(timber, solid => Math.Abs(solid.Conductivity - ((0.1175 * 0.13) + (0.8825 * depth / 1000 / 0.16))) < 0.03);
    }

    /// <summary>The schedule's U, the solver's promise and the field count air alike.</summary>
    [Fact]
    public void A_partly_filled_cavity_is_the_same_layer_of_air_to_schedule_and_field()
    {
        var section = Shipped.Build("parapet", "cavity-masonry", "warm-concrete-deck", "wall.fill=partial", "wall.lining=wet-plaster");
        var wall = BuildupResistance.Of(section.Buildups.Single(buildup => buildup.Id == "wall"));
        var flank = JunctionHeat.Of(ThermalModelling.Of(section, Coarse), Coarse).Flanks.Single(flank => flank.Id == "wall");
        Assert.Equal(wall.UValue, flank.UValue.Value, 1e-9);
    }

    [Fact]
    public void A_fall_is_no_thermal_bridge()
    {
        var flat = Heat("roof.fall=1:80");
        var steep = Heat("roof.fall=1:40");
        Assert.Equal(flat.Flanks.Single(flank => flank.Id == "wall").UValue.Value, steep.Flanks.Single(flank => flank.Id == "wall").UValue.Value, 1e-12);
        foreach (var heat in (JunctionHeat[])[flat, steep])
        {
            Assert.InRange(heat.Model.Case.Boundary.Where(line => line.Environment?.Name == "outside").SelectMany(line => line.Line).Where(at => at.X > 600).Select(at => at.Y).Distinct().Count(), 1, 6);
        }

        static JunctionHeat Heat(string fall) =>
            JunctionHeat.Of(ThermalModelling.Of(Shipped.Build("parapet", "cavity-masonry", "warm-concrete-deck", fall), Coarse), Coarse);
    }

    private static void Holds(JunctionHeat heat)
    {
        Assert.True(heat.Coupling.Lower <= heat.Coupling.Upper && heat.Coupling.Lower > 0);
        Assert.InRange(heat.HeatBalance, -1e-9, 1e-9);
        Assert.InRange(heat.Factor.Value, 0.01, 1);
        Assert.InRange(heat.MouldFactor.Value, 0.01, heat.Factor.Value + 1e-9);
        Assert.True(double.IsFinite(heat.PsiInternal.Value) && double.IsFinite(heat.PsiExternal.Value));
        Assert.All(heat.Flanks, flank => Assert.True(flank.UValue.Lower > 0 && flank.Internal > 0 && flank.External > 0, flank.Id));
    }
}
