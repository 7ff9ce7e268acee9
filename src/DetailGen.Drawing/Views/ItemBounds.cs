using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Views;

/// <summary>The rectangle around drawn geometry.</summary>
internal static class ItemBounds
{
    public static PaperBox Of(IEnumerable<Item> items)
    {
        var box = new PaperBox(double.MaxValue, double.MaxValue, double.MinValue, double.MinValue);
        foreach (var item in items)
        {
            IEnumerable<PaperPoint> points = item switch
            {
                Stroke stroke => stroke.Points,
                Solid solid => solid.Outline,
                Hatch hatch => hatch.Outline,
                Grains grains => grains.Centres,
                Ring ring => [ring.Centre],
                Dot dot => [dot.Centre],
                _ => [],
            };
            foreach (var point in points)
            {
                box = box.With(new(point.X, point.Y, point.X, point.Y));
            }
        }

        return box.Left > box.Right ? default : box;
    }
}
