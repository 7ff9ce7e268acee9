using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Annotation.Notes;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Tests.Annotation;

public sealed class TipsTests
{
    [Fact]
    public void Units_are_named_in_a_unit_and_not_in_a_joint()
    {
        Stroke[] joints = [.. Enumerable.Range(0, 9).SelectMany(course => new[] { 7.5 * course, 7.5 * course + 1 }).Select(y => new Stroke("", [new(0, y), new(10, y)]))];
        var leaf = new NotedPart("leaf", Region.Box(0, 0, 10, 60), [], Look.Filled) { Joints = joints };
        var tips = Tips.Of(new Shape(leaf, mirrored: false), []);
        Assert.NotEmpty(tips);
        Assert.All(tips, tip => Assert.DoesNotContain(joints, joint => Math.Abs(joint.Points[0].Y - tip.At.Y) < 0.5));
        Assert.All(tips, tip => Assert.InRange(tip.At.Y % 7.5, 1, 7.5));
    }

    [Fact]
    public void A_part_is_not_named_on_a_sheet_that_runs_over_it()
    {
        var board = new NotedPart("board", Region.Box(0, 0, 4, 40), [], Look.Filled);
        var sheet = new Shape(new NotedPart("sheet", Region.Box(1.5, -5, 2.5, 30), [], Look.Band), mirrored: false);
        var tips = Tips.Of(new Shape(board, mirrored: false), [sheet]);
        Assert.NotEmpty(tips);
        Assert.All(tips, tip => Assert.False(sheet.Contains(tip.At.X, tip.At.Y)));
    }
}
