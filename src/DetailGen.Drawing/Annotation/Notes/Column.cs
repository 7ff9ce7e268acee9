using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>A column in which notes stand, with the outside of the building on the left.</summary>
/// <param name="Id">outer, above or below.</param>
/// <param name="Side">+1: the column stands right of what it names, −1 left of it.</param>
/// <param name="Bend">x of the line on which its leaders bend.</param>
/// <param name="Room">Where its blocks may stand, from the bend line on.</param>
internal sealed record Column(string Id, int Side, double Bend, PaperBox Room)
{
    /// <summary>From the bend to the text that begins at it.</summary>
    internal const double Shoulder = 4.5;

    /// <summary>Between a line and the text that it belongs to.</summary>
    internal const double TextGap = 1;

    /// <summary>Blocks begin as far out as this wide a block would, so that they stand in line with the wall's stack.</summary>
    internal double Least { get; init; }

    internal const double LeastShoulder = 2.5;

    /// <summary>White between blocks.</summary>
    internal const double Gap = 2;

    /// <summary>Widest block that fits.</summary>
    internal double Widest => Room.Width - Shoulder;

    /// <summary>The strip that a block takes whichever way its column is justified.</summary>
    /// <param name="width">Of the column's widest block.</param>
    internal PaperBox Box(Block block, double level, double width) => Box(block.Above, block.Below, level, width);

    internal PaperBox Box(double above, double below, double level, double width) => Side > 0
        ? new(Bend + LeastShoulder, level - below, Bend + Shoulder + width, level + above)
        : new(Bend - Shoulder - width, level - below, Bend - LeastShoulder, level + above);
}
