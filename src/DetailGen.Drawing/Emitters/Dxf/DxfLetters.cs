using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Dxf;
using DetailGen.Dxf.Entities;

namespace DetailGen.Drawing.Emitters.Dxf;

/// <summary>Texts of a scene as entities. There is one style of letters, so bold is not carried over.</summary>
internal static class DxfLetters
{
    // Pitch of MTEXT lines at spacing 1, as a factor on the height of capitals.
    private const double UsualPitch = 5.0 / 3;

    public static Entity Line(Typeface typeface, string layer, Scenes.Text text, DxfPlace place) =>
        new DetailGen.Dxf.Entities.Text(Plain(text.Words), place.At(text.At), text.Height * place.Scale, Width(typeface, text.Words, text.Height) * place.Scale)
        {
            Layer = layer,
            Across = text.Align switch { Align.Centre => Across.Centre, Align.Right => Across.Right, _ => Across.Left },
            Rotation = text.Rotation,
        };

    public static Entity Lines(Typeface typeface, string layer, Paragraph paragraph, DxfPlace place)
    {
        var width = 0.0;
        foreach (var line in paragraph.Lines)
        {
            width = Math.Max(width, Width(typeface, line, paragraph.Height));
        }

        // The scene gives the first base line, the entity the top of its capitals.
        return new Mtext([.. paragraph.Lines.Select(Plain)], place.At(paragraph.At.X, paragraph.At.Y + paragraph.Height), paragraph.Height * place.Scale, width * place.Scale)
        {
            Layer = layer,
            LineSpacing = paragraph.Pitch / (UsualPitch * paragraph.Height),
        };
    }

    /// <summary>Left end of the base line, wherever the text is anchored.</summary>
    public static DxfPoint LeftEnd(Typeface typeface, Scenes.Text text, DxfPlace place)
    {
        var width = Width(typeface, text.Words, text.Height);
        var back = text.Align switch { Align.Centre => width / 2, Align.Right => width, _ => 0 };
        return place.At(text.At) - new DxfPoint(back * place.Scale, 0).Turned(text.Rotation);
    }

    /// <summary>The true minus sign is missing in many fonts of other programs; the hyphen is not.</summary>
    public static string Plain(string words) => words.Replace('\u2212', '-');

    private static double Width(Typeface typeface, string words, double height) => typeface.Width(Plain(words), height);
}
