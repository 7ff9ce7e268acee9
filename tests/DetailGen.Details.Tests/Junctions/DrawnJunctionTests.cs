using DetailGen.Drawing.Views;
using DetailGen.Sections;

namespace DetailGen.Details.Tests.Junctions;

/// <summary>How junctions look on paper, at every scale and either hand.</summary>
public class DrawnJunctionTests
{
    private static readonly double[] Scales = [2, 5, 10, 20];

    public static TheoryData<string, string, string> Pairings => ShippedJunctionTests.Pairings;

    private static IEnumerable<(double Scale, bool Mirror, DrawnView View)> Views(Section section) =>
        from scale in Scales
        from mirror in (bool[])[false, true]
        select (scale, mirror, SectionView.Draw(section, new(scale, new(-1e4, -1e4, 1e4, 1e4), mirror)));

    [Theory]
    [MemberData(nameof(Pairings))]
    public void The_field_membrane_is_drawn_at_its_full_width_under_any_finish(string junction, string wall, string roof)
    {
        foreach (var finish in (string[])["bare", "ballast", "paving"])
        {
            var section = Shipped.Build(junction, wall, roof, $"roof.finish={finish}");
            var membrane = section["roof.membrane"];
            var (from, to) = (membrane.Region.Bounds.Left + 250, membrane.Region.Bounds.Right - 50);
            foreach (var (scale, mirror, view) in Views(section))
            {
                var wanted = SheetStyles.Of(membrane, scale).Width;
                for (var x = from; x < to; x += 37)
                {
                    var at = view.At(new(x, 0)).X;
                    var seen = view.Part("roof.membrane")!.Visible.Cut(new(at, -1e4), new(at, 1e4)).Sum(piece => (piece.To - piece.From).Length);
                    Assert.True(seen > wanted - 0.01, $"{finish} at 1:{scale}{(mirror ? ", mirrored" : "")}: {seen:0.000} at {x:0}, not {wanted:0.000}.");
                }
            }
        }
    }

    // At 1:20 a bare backing board, and the space behind the leg of a metal coping, are narrower than the sheets in them are drawn; the sheet says so.
    [Theory]
    [MemberData(nameof(Pairings))]
    public void Drawn_sheets_keep_white_between_them(string junction, string wall, string roof)
    {
        var solid = wall == "solid-masonry-insulated";
        string[] flashed = junction == "parapet" && solid ? ["upstand.top=flashing"] : [];
        List<string[]> variants =
        [
            [], ["roof.finish=paving", "upstand.fillet=0 mm"], ["upstand.insulation=0 mm"], ["upstand.insulation=25 mm", "upstand.backing=6 mm"],
            [.. flashed, "flashing.clearance=5 mm"], [.. flashed, "upstand.head-fall=1:20"], [.. flashed, "upstand.head-fall=1:60"],
        ];
        variants.AddRange(junction == "parapet"
            ? [["coping.kind=metal"], ["coping.kind=metal", "coping.fall-to=both"], solid ? flashed : ["upstand.top=coping", "tray.discharge=outside"]]
            : roof == "warm-timber-deck" ? [["roof.tied-to-wall=no"]] : []);
        var merged =
            from set in variants
            from seen in Views(Shipped.Build(junction, wall, roof, set))
            where seen.Scale < 20 || !(set.Contains("upstand.insulation=0 mm") || set.Contains("coping.kind=metal"))
            from fault in seen.View.Faults
            where fault.Rule == "sheet-merge"
            select $"1:{seen.Scale}{(seen.Mirror ? " mirrored" : "")} {string.Join(' ', set)}: {string.Join(" and ", fault.Parts)}";
        Assert.Equal("", string.Join('\n', merged));
    }

    [Theory]
    [InlineData("abutment", "warm-timber-deck")]
    [InlineData("abutment", "warm-timber-deck", "roof.tied-to-wall=no")]
    [InlineData("abutment", "warm-concrete-deck", "tray.step=50 mm", "wall.cavity=300 mm")]
    [InlineData("parapet", "warm-timber-deck")]
    [InlineData("parapet", "warm-concrete-deck", "tray.step=75 mm")]
    [InlineData("parapet", "warm-concrete-deck", "tray.discharge=outside")]
    [InlineData("parapet", "warm-timber-deck", "tray.discharge=outside", "upstand.top=coping")]
    public void A_tray_falls_or_is_level_all_the_way_to_the_weep(string junction, string roof, params string[] set)
    {
        var section = Shipped.Build(junction, "cavity-masonry", roof, set);
        foreach (var (scale, mirror, view) in Views(section))
        {
            // Laid from its upper end; mirrored, from the other.
            var line = view.Part("tray")!.Line;
            var run = line[0].Y > line[^1].Y ? line : [.. line.Reverse()];
            for (var i = 1; i < run.Count; i++)
            {
                Assert.True(run[i].Y <= run[i - 1].Y + 0.01, $"1:{scale}{(mirror ? ", mirrored" : "")}: rises from {run[i - 1]} to {run[i]}.");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Pairings))]
    public void No_break_across_a_wall_leaves_a_sliver_of_a_unit(string junction, string wall, string roof)
    {
        var section = Shipped.Build(junction, wall, roof);
        foreach (var run in section.Runs.Where(run => run.Heading != Heading.Along))
        {
            for (var past = 0; past < 240; past += 7)
            {
                var asked = run.Heading == Heading.Down ? run.Least - past : run.Least + past;
                var at = BreakLines.OffSlivers(section, run.Heading, asked);
                Assert.InRange(run.Heading == Heading.Down ? at - asked : asked - at, 0, 20);
                foreach (var coursing in section.Parts.Where(part => part.Coursing is not null && part.Region.Bounds.Bottom < at && part.Region.Bounds.Top > at).Select(part => part.Coursing!))
                {
                    var bed = coursing.Datum + (Math.Round((at - coursing.Datum) / coursing.Height) * coursing.Height);
                    var left = run.Heading == Heading.Down ? bed - at : at - bed - coursing.Joint;
                    Assert.False(left is > 0.01 and < 19.99, $"A unit of {left:0.0} is left at {at:0.0}.");
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Pairings))]
    public void The_wall_is_numbered_from_outside_whichever_way_it_stands(string junction, string wall, string roof)
    {
        var section = Shipped.Build(junction, wall, roof);
        var layers = section.Buildups[0].Layers;
        var weather = section.Buildups[0].At.From.X;
        var away = layers.Select(layer => Math.Abs(section[layer.PartId].Region.Bounds.Middle.X - weather)).ToArray();
        Assert.Equal(away.Order(), away);
        Assert.Equal(Enumerable.Range(1, layers.Count).Select(number => $"W{number}"), layers.Select(layer => layer.Reference));
    }
}
