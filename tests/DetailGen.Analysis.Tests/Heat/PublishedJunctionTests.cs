using System.Text.Json.Nodes;
using DetailGen.Analysis.Heat;
using DetailGen.Sections;
using DetailGen.Testing;

namespace DetailGen.Analysis.Tests.Heat;

/// <summary>A section drawn like a junction of <c>physics-checks.json</c> gets that junction's figures, though its roof is cut off nearer.</summary>
public class PublishedJunctionTests
{
    // the cases are computed by several meshes and methods, with bounds; see their reference entries
    [Theory]
    [InlineData("junction-i", 37, 290, -366)]
    [InlineData("parapet-skew", 47, 320, -358)]
    public void A_section_like_a_published_junction_gets_its_figures(string id, double upstandFace, double top, double weather)
    {
        var published = Case(id);
        var conditions = new HeatConditions();
        var heat = JunctionHeat.Of(ThermalModelling.Of(Drawn(published, upstandFace, top, weather), conditions), conditions);
        foreach (var expected in published["expected"]!.AsArray())
        {
            var found = expected!["path"]!.GetValue<string>() switch
            {
                "result.flanking.0.u_w_m2k" => heat.Flanks[0].UValue.Value,
                "result.flanking.1.u_w_m2k" => heat.Flanks[1].UValue.Value,
                "result.psi_internal_w_mk" => heat.PsiInternal.Value,
                "result.psi_external_w_mk" => heat.PsiExternal.Value,
                "result.f_rsi.value" => heat.Factor.Value,
                "result.f_rsi.x_mm" => heat.Factor.At.X,
                "result.f_rsi.y_mm" => heat.Factor.At.Y,
                "result.f_rsi_humidity.value" => heat.MouldFactor.Value,
                _ => (double?)null, // the coupling hangs on where the roof is cut off
            };
            if (found is { } value)
            {
                Assert.Equal(expected["value"]!.GetValue<double>(), value, expected["tolerance"]!.GetValue<double>());
            }
        }

        Assert.InRange(heat.HeatBalance, -1e-9, 1e-9);
        Assert.Equal(2, heat.Flanks.Count);
    }

    [Fact]
    public void Mirroring_the_model_changes_no_figure()
    {
        var conditions = new HeatConditions();
        var model = ThermalModelling.Of(Drawn(Case("parapet-skew"), 47, 320, -358), conditions);
        var mirrored = model with
        {
            Case = model.Case with
            {
                Regions = [.. model.Case.Regions.Select(region => region with { Outline = [.. region.Outline.Select(at => at with { X = -at.X })] })],
                Boundary = [.. model.Case.Boundary.Select(line => line with { Line = [.. line.Line.Select(at => at with { X = -at.X })] })],
            },
        };
        var (one, other) = (JunctionHeat.Of(model, conditions), JunctionHeat.Of(mirrored, conditions));
        Assert.True(Math.Max(one.PsiInternal.Lower, other.PsiInternal.Lower) <= Math.Min(one.PsiInternal.Upper, other.PsiInternal.Upper));
        Assert.Equal(one.Factor.Value, other.Factor.Value, 2e-4);
        Assert.Equal(one.Factor.At.X, -other.Factor.At.X, 2.0);
    }

    private static JsonNode Case(string id) =>
        JsonNode.Parse(File.ReadAllText(Repository.Path("tests", "DetailGen.Physics.Tests", "Cases", "physics-checks.json")))!["cases"]!.AsArray()
            .Single(one => one!["id"]!.GetValue<string>() == id)!;

    private static Section Drawn(JsonNode published, double upstandFace, double top, double weather)
    {
        var parts = published["regions"]!.AsArray().Select((region, i) =>
        {
            var name = region!["material"]!.GetValue<string>();
            var conductivity = published["materials"]![name]!["lambda_w_mk"]!.GetValue<double>();
            return new Part($"{name}.{i}", name, new(name, name, "board", "", "", conductivity, 1000, "assumed"), Element.Wall, Shape(region), Presence.Cut, Roles.None, i + 1)
            {
                Slot = name,
                Words = new("", "", ""),
            };
        });
        return new(
            "parapet", [.. parts], [new("finished-roof", "", new(upstandFace, top), true), new("ceiling", "", new(1500, 0), true)], [], [], [],
            [new("wall-foot", Heading.Down, -1000, -1500, (weather, 0)), new("roof-end", Heading.Along, 1000, 1500, (0, top))], []);
    }

    private static Region Shape(JsonNode region) => region["rect"] is JsonArray rect
        ? Region.Box(rect[0]!.GetValue<double>(), rect[1]!.GetValue<double>(), rect[2]!.GetValue<double>(), rect[3]!.GetValue<double>())
        : Region.Polygon([.. region["polygon"]!.AsArray().Select(corner => new Point(corner![0]!.GetValue<double>(), corner[1]!.GetValue<double>()))]);
}
