namespace DetailGen.Dxf;

/// <summary>The 255 colours that the format numbers.</summary>
/// <remarks>Built by rule, from memory: 1 to 6 the pure hues, 7 ink, 8 and 9 greys; 10 to 249 are 24 hues 15° apart, each in five
/// shades, full and a third saturated; 250 to 255 greys. Readers agree on the hues and differ in the shades (by up to 44 of 255 in the
/// one compared), which is bearable for an index that only stands in where the true colour beside it is not understood.</remarks>
internal static class Palette
{
    private static readonly int[] Shades = [255, 189, 129, 104, 79];
    private static readonly int[] Colors = Build();

    /// <summary>r·65536 + g·256 + b of an index from 1 to 255.</summary>
    public static int ColorOf(int index) => Colors[index];

    /// <summary>The nearest by squared distance of the three parts; the smaller index of equals. Never 7, which turns with the background.</summary>
    public static int Nearest(byte red, byte green, byte blue)
    {
        var (nearest, least) = (0, int.MaxValue);
        for (var index = 1; index < Colors.Length; index++)
        {
            var (r, g, b) = ((Colors[index] >> 16) - red, ((Colors[index] >> 8) & 255) - green, (Colors[index] & 255) - blue);
            var distance = (r * r) + (g * g) + (b * b);
            if (distance < least && index != 7)
            {
                (nearest, least) = (index, distance);
            }
        }

        return nearest;
    }

    private static int[] Build()
    {
        var colors = new int[256];
        ReadOnlySpan<int> first = [0, 0xFF0000, 0xFFFF00, 0x00FF00, 0x00FFFF, 0x0000FF, 0xFF00FF, 0xFFFFFF, 0x808080, 0xC0C0C0];
        ReadOnlySpan<int> greys = [0x333333, 0x505050, 0x696969, 0x828282, 0xBEBEBE, 0xFFFFFF];
        first.CopyTo(colors);
        greys.CopyTo(colors.AsSpan(250));
        for (var index = 10; index < 250; index++)
        {
            var top = Shades[index % 10 / 2];
            var bottom = index % 2 == 0 ? 0 : top * 2 / 3;
            var hue = (index / 10) - 1;
            colors[index] = (Part(hue, 0, top, bottom) << 16) | (Part(hue, 16, top, bottom) << 8) | Part(hue, 8, top, bottom);
        }

        return colors;
    }

    // One part of a hue in steps of 15°: full within 60° of its own direction, none beyond 120°, and a ramp of four steps between.
    private static int Part(int hue, int lag, int top, int bottom)
    {
        var away = (hue + lag) % 24;
        away = Math.Min(away, 24 - away);
        return bottom + ((top - bottom) * Math.Clamp(8 - away, 0, 4) / 4);
    }
}
