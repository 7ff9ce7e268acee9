namespace DetailGen.Dxf.Tables;

/// <summary>The one style of letters. Heights of text are heights of capitals, not ems.</summary>
/// <param name="FontFile">Named only; nothing is read from it.</param>
public sealed record TextStyle(string FontFile, string Family)
{
    /// <summary>Every reader has this name, so it is the only one used.</summary>
    public const string Name = "Standard";

    /// <summary>The common sans-serif, whose letters are as wide as those of Liberation Sans.</summary>
    public static TextStyle Sans { get; } = new("arial.ttf", "Arial");
}
