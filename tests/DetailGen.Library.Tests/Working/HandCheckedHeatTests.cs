using DetailGen.Analysis.Heat;
using DetailGen.Library.Working;
using DetailGen.Testing;

namespace DetailGen.Library.Tests.Working;

/// <summary>
/// Two details recomputed by hand from their printed layers: thickness over conductivity, surface resistances of EN ISO 6946 (0.13 sideways, 0.10 upwards, 0.04
/// outside), lengths from the drawn sizes, Ψ = L2D − Σ U·l (ISO 10211). Nothing here calls what it checks.
/// </summary>
public class HandCheckedHeatTests
{
    private static readonly JunctionHeat Parapet = Work(
        "parapet-01", "wall.outer-leaf=102.5 mm", "wall.cavity=150 mm", "wall.inner-leaf=100 mm", "wall.dab=15 mm", "wall.lining-insulation=40 mm", "wall.lining-board=12.5 mm",
        "roof.joist-depth=195 mm", "roof.firring=95 mm", "roof.deck=18 mm", "roof.insulation=160 mm", "upstand.insulation=50 mm");

    private static readonly JunctionHeat Abutment = Work(
        "abutment-02", "wall.render=10 mm", "wall.insulation=120 mm", "wall.block=215 mm", "wall.plaster=13 mm", "roof.slab=200 mm", "roof.screed=100 mm", "roof.insulation=160 mm",
        "upstand.insulation=75 mm");

    // 0.13 + brick + mineral wool + block + dabs side by side with air (0.034884 and 0.17 over a fifth and four fifths) + foam + board + 0.04 = 6.776876
    [Fact]
    public void The_cavity_wall_of_the_parapet_passes_what_its_layers_let_pass()
    {
        const double dabs = 1 / ((0.2 / (0.015 / 0.43)) + (0.8 / 0.17));
        Near(1 / (0.13 + (0.1025 / 0.77) + (0.15 / 0.034) + (0.1 / 1.13) + dabs + (0.04 / 0.022) + (0.0125 / 0.21) + 0.04), Flank(Parapet, "wall").UValue.Value, 1e-6);
    }

    // Two dimensions lie between the two limits of the combined method: heat that may not pass sideways, and heat that passes sideways freely. Joists are 47 at 400
    // and 290 deep with their firrings; between them air of 0.16. The foil takes no place: its half millimetre is counted to the deck.
    [Fact]
    public void The_timber_roof_of_the_parapet_lies_between_the_limits_of_the_combined_method()
    {
        const double share = 0.047 / 0.4, timber = 0.29 / 0.13, rest = 0.10 + (0.16 / 0.025) + (0.018 / 0.13) + (0.0125 / 0.21) + 0.04;
        const double upper = 1 / ((share / (rest + timber)) + ((1 - share) / (rest + 0.16))), lower = rest + (1 / ((share / timber) + ((1 - share) / 0.16)));
        var u = Flank(Parapet, "roof").UValue;
        Assert.InRange(u.Upper, 1 / (upper + 0.004), 1 / lower);
        Assert.InRange(u.Lower, 1 / (upper + 0.004), 1 / lower);
    }

    // The wall is cut three roof depths (482.5, the membrane included) below the ceiling; the roof is 481 without its membrane, the wall 420 with its lining.
    [Fact]
    public void Lengths_of_the_parapet_go_from_the_faces_that_meet_in_the_corner()
    {
        var (wall, roof) = (Flank(Parapet, "wall"), Flank(Parapet, "roof"));
        Near(3 * (12.5 + 195 + 95 + 18 + 0.5 + 160 + 1.5), wall.Internal, 0.01);
        Near(12.5 + 195 + 95 + 18 + 0.5 + 160, wall.External - wall.Internal, 0.01);
        Near(102.5 + 150 + 100 + 15 + 40 + 12.5, roof.External - roof.Internal, 0.01);
        Assert.True(wall.Internal >= 1000 && wall.Internal >= 3 * 420);
        Assert.True(roof.External - 352.5 - 64 >= 3 * 481); // from the face of the upstand: 50 + 12 + 0.5 + 1.5 before the roof-side face of the wall
    }

    // 0.13 + plaster + block + foam + render + 0.04 = 4.273733; 0.10 + slab + screed + foam + 0.04 = 6.713913, half a millimetre of foil counted to the screed
    [Fact]
    public void Wall_and_concrete_roof_of_the_abutment_pass_what_their_layers_let_pass()
    {
        Near(1 / (0.13 + (0.013 / 0.4) + (0.215 / 1.13) + (0.12 / 0.031) + (0.01 / 1.0) + 0.04), Flank(Abutment, "wall").UValue.Value, 1e-6);
        Near(1 / (0.10 + (0.2 / 2.3) + (0.1 / 1.15) + (0.16 / 0.025) + 0.04), Flank(Abutment, "roof").UValue.Value, 2e-5);
    }

    // Below the roof the bare block stands in the lower room, 130 behind the finished render above it.
    [Fact]
    public void Lengths_of_the_abutment_go_from_the_block_inside_and_from_the_render_outside()
    {
        var (wall, roof) = (Flank(Abutment, "wall"), Flank(Abutment, "roof"));
        Near(10 + 120, roof.Internal - roof.External, 0.01);
        Near(200 + 100 + 0.5 + 160, wall.Internal - wall.External, 0.01);
        Assert.True(wall.External >= 1000 && wall.External >= 3 * 358 && roof.External >= 1000);
    }

    public static TheoryData<string> Both => [nameof(Parapet), nameof(Abutment)];

    [Theory]
    [MemberData(nameof(Both))]
    public void Psi_is_what_the_coupling_has_left_after_wall_and_roof(string name)
    {
        var heat = Named(name);
        var (wall, roof) = (Flank(heat, "wall"), Flank(heat, "roof"));
        Near(heat.Coupling.Value - (wall.UValue.Value * wall.Internal / 1000) - (roof.UValue.Value * roof.Internal / 1000), heat.PsiInternal.Value, 1e-9);
        Near(heat.Coupling.Value - (wall.UValue.Value * wall.External / 1000) - (roof.UValue.Value * roof.External / 1000), heat.PsiExternal.Value, 1e-9);
    }

    [Theory]
    [MemberData(nameof(Both))]
    public void Surface_resistances_are_those_of_the_direction_of_the_heat(string name)
    {
        foreach (var line in Named(name).Model.Case.Boundary.Where(line => line.Environment is not null))
        {
            double[] known = line.Environment!.Name == "outside" ? [0.04] : [0.13, 0.10]; // sideways to a wall, upwards to a ceiling; nothing here looks down on a room
            Assert.Contains(line.Film, known);
            var (from, to) = (line.Line[0], line.Line[1]);
            Assert.Equal(line.Film == 0.10, line.Environment.Name != "outside" && Math.Abs(to.X - from.X) > Math.Abs(to.Y - from.Y));
        }
    }

    // With both rooms 20 K warmer than outside each sends its own coupling with the outside; the flows come from the field, the pairs from energies.
    [Fact]
    public void Pairs_of_airs_say_what_flows_between_them()
    {
        var pairs = Abutment.Pairs;
        Assert.Equal([("higher-room", "outside"), ("lower-room", "outside"), ("lower-room", "higher-room")], pairs.Select(pair => (pair.Warm, pair.Cold)));
        foreach (var pair in pairs.Take(2))
        {
            Assert.InRange(Abutment.Flows.Single(flow => flow.Environment == pair.Warm).Flow / 20, pair.Coupling.Lower, pair.Coupling.Upper);
        }

        Near(Abutment.Coupling.Value, pairs[0].Coupling.Value + pairs[1].Coupling.Value, 1e-9);
        Near(Abutment.PsiInternal.Value, pairs[0].PsiInternal.Value + pairs[1].PsiInternal.Value, 1e-9);
        Near(Abutment.PsiExternal.Value, pairs[0].PsiExternal.Value + pairs[1].PsiExternal.Value, 1e-9);
    }

    // The block with its plaster on one side, a room on both: 0.13 + 0.013/0.4 + 0.215/1.13 + 0.13; up to the ceiling, or to the outside surface of the roof.
    [Fact]
    public void The_wall_between_the_rooms_is_taken_off_what_they_exchange()
    {
        var (between, wall) = (Abutment.Pairs[2], Flank(Abutment, "wall"));
        const double u = 1 / (0.13 + (0.013 / 0.4) + (0.215 / 1.13) + 0.13);
        Near(u, between.Flank!.UValue.Value, 1e-6);
        Near(460.5, between.Flank.External - between.Flank.Internal, 0.01);
        Near(between.Coupling.Value - (u * between.Flank.Internal / 1000), between.PsiInternal.Value, 1e-6);
        Near(between.Coupling.Value - (u * between.Flank.External / 1000), between.PsiExternal.Value, 1e-6);
        Near(wall.Internal - wall.External, between.Flank.External - between.Flank.Internal, 0.01); // one wall from cut to cut, whichever lengths are taken
    }

    private static JunctionHeat Named(string name) => name == nameof(Parapet) ? Parapet : Abutment;

    private static FlankHeat Flank(JunctionHeat heat, string id) => heat.Flanks.Single(flank => flank.Id == id);

    private static void Near(double byHand, double calculated, double apart) => Assert.InRange(calculated, byHand - apart, byHand + apart);

    private static JunctionHeat Work(string name, params string[] set)
    {
        var office = Office.Of(null).Value;
        return DetailWork.Do(PresetFiles.Read(Repository.Path("presets", "details", $"tern-court-{name}.yaml"), set, office).Value, office, Simulation.Always).Worked!.Heat!;
    }
}
