using DetailGen.Drawing.Lettering;

namespace DetailGen.Drawing.Scenes;

/// <summary>A colour; black is written so that it turns white on a dark screen.</summary>
public readonly record struct Ink(byte Red, byte Green, byte Blue)
{
    public static Ink Black { get; } = new(0, 0, 0);
}

/// <summary>How a row of the layer map looks.</summary>
/// <param name="Row">The id by which the drawing code knows it, such as <c>cut.BK.wall</c>, <c>fill.BK.wall</c>, <c>note.text</c>.</param>
/// <param name="Name">The layer's name, composed after ISO 13567-2.</param>
/// <param name="Width">Line width on paper, mm, from the standard series.</param>
/// <param name="LineType">continuous, dashed, dash-dot or chain.</param>
public sealed record LayerRow(string Row, string Name, double Width, string LineType, Ink Ink, bool Plotted = true);

/// <summary>A picture of the model at one scale; its items are in paper mm, so a model point (x, y) lies at (x, y) / scale, x turned round where the view is mirrored.</summary>
/// <param name="Id">Such as <c>section</c>; unique in the scene.</param>
/// <param name="Scale">s of 1:s.</param>
/// <param name="Items">In the order of drawing.</param>
/// <param name="Bounds">Around all items, text included.</param>
public sealed record View(string Id, double Scale, IReadOnlyList<Item> Items, PaperBox Bounds);

/// <summary>Where a view stands on a page: the view's origin lies at <paramref name="Origin"/> and the view is seen within <paramref name="Window"/>, both in page mm.</summary>
public sealed record Placement(string ViewId, PaperPoint Origin, PaperBox Window);

/// <summary>One sheet of paper.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Paper">A4 to A1, ANSI-A to ANSI-D, or "view" where only the view is wanted.</param>
public sealed record Page(int Number, string Paper, double Width, double Height, IReadOnlyList<Placement> Placements, IReadOnlyList<Item> Items);

/// <summary>What is on the paper: the one thing that all emitters write.</summary>
/// <param name="Layers">Every row that an item names, in the order of the layer map.</param>
/// <param name="Views">Drawn under the page items.</param>
/// <param name="Identity">What the files say of themselves.</param>
public sealed record Scene(IReadOnlyList<LayerRow> Layers, IReadOnlyList<View> Views, IReadOnlyList<Page> Pages, Identity Identity)
{
    /// <summary>With which its texts were measured.</summary>
    public Typeface Typeface { get; init; } = Typeface.Shipped;

    /// <summary>The same with every ink black: what a print is unless colour is asked for, since grey screens break up on copies.</summary>
    public Scene InBlack() => this with { Layers = [.. Layers.Select(layer => layer with { Ink = Ink.Black })] };

    public LayerRow Layer(string row) => Layers.FirstOrDefault(layer => layer.Row == row) ?? throw new KeyNotFoundException($"The layer map has no row {row}.");
}

/// <summary>What a file says of the drawing.</summary>
/// <param name="Date">Of the title block; null if none: no clock is read.</param>
/// <param name="Parameters">The preset and its solved values as canonical JSON, embedded so that a drawing can be read back; empty to leave out.</param>
public sealed record Identity(string Number, string Revision, string Title, string Author, string Project, DateOnly? Date, string Parameters);
