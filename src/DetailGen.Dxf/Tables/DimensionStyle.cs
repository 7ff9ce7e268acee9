namespace DetailGen.Dxf.Tables;

/// <summary>How dimensions look at one plot scale. The sizes must be those of the pictures, because a program redraws the picture from
/// them as soon as somebody edits the dimension.</summary>
/// <param name="Scale">Denominator of the plot scale: 10 at 1:10, 1 for dimensions on the sheet itself.</param>
public sealed record DimensionStyle(string Name, double Scale)
{
    public const string Standard = "Standard";

    /// <summary>Height of capitals, mm on paper.</summary>
    public double TextOnPaper { get; init; } = 2.5;

    /// <summary>From the measured point to where the witness line begins, mm on paper.</summary>
    public double OffsetOnPaper { get; init; } = 1.5;

    /// <summary>How far the witness line runs past the dimension line, mm on paper.</summary>
    public double ExtensionOnPaper { get; init; } = 1.5;

    /// <summary>Half the length of an oblique stroke, mm on paper.</summary>
    public double StrokeOnPaper { get; init; } = 1.25;

    /// <summary>From the dimension line to the foot of the text, mm on paper.</summary>
    public double GapOnPaper { get; init; } = 0.8;
}
