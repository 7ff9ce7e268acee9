namespace DetailGen.Dxf.Tables;

/// <summary>The line weights that the format knows, in 1/100 mm.</summary>
/// <remarks>The format's published reference, group 370.</remarks>
public static class LineWeights
{
    /// <summary>The reader's own default.</summary>
    public const int Default = -3;

    private static readonly int[] Known =
        [0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211];

    public static bool Contains(int hundredths) => hundredths == Default || Array.BinarySearch(Known, hundredths) >= 0;

    /// <summary>The nearest known weight to a width in mm; the thinner of two that are as near.</summary>
    public static int Nearest(double millimetres)
    {
        var nearest = Known[0];
        foreach (var weight in Known)
        {
            if (Math.Abs(weight - (millimetres * 100)) < Math.Abs(nearest - (millimetres * 100)))
            {
                nearest = weight;
            }
        }

        return nearest;
    }
}
