using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Annotation.Notes;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Tests.Annotation;

public sealed class RayTests
{
    private static readonly NotedPart Own = new("own", Region.Box(0, 0, 10, 10), [], Look.Filled);

    [Fact]
    public void Each_foreign_part_beyond_two_makes_a_leader_much_dearer()
    {
        double Cost(int parts) => Ray(Enumerable.Range(0, parts).Select(i => new NotedPart($"part {i}", Region.Box(15 + 5 * i, -50, 17 + 5 * i, 50), [], Look.Filled)))!.To(50)!.Value.Cost;
        Assert.InRange(Cost(2) - Cost(0), 1, 20);
        Assert.InRange(Cost(3) - Cost(2), 40, 80);
    }

    [Fact]
    public void A_leader_may_bend_before_a_foreign_part_and_pays_for_it_only_behind_it()
    {
        var ray = Ray([new("part", Region.Box(20, -50, 40, 50), [], Look.Filled)])!;
        Assert.Equal(ray.To(14)!.Value.Cost + 20 + Weights.ForeignPart + 20 * Weights.Through, ray.To(14 + 20 + 1)!.Value.Cost - 1, 6);
        Assert.True(ray.To(14)!.Value.Strict);
    }

    [Fact]
    public void A_leader_runs_along_an_edge_only_where_a_note_would_have_no_mark_else()
    {
        var edge = new Stroke("cut", [new(20, 5.3), new(40, 5.3)]);
        var view = new AnnotatedView(10, false, [Own], [], new(-100, -100, 100, 100)) { Drawn = [edge] };
        var surface = new Surface(view);
        var ray = Notes(surface)!;
        Assert.NotNull(ray.To(16.9));
        Assert.Null(ray.To(17.1));
        Assert.InRange(ray.To(17.1, alongToo: true)!.Value.Cost, Weights.Along, 2 * Weights.Along);
    }

    private static Ray? Ray(IEnumerable<NotedPart> others) => Notes(new Surface(new AnnotatedView(10, false, [Own, .. others], [], new(-100, -100, 100, 100))));

    private static Ray? Notes(Surface surface) => Drawing.Annotation.Notes.Ray.Of(surface, surface.ById["own"], new(new(5, 5), 5, 5), 0, 1, 60);
}
