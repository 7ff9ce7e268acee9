using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <summary>A section as drawn, without annotation. Everything in paper mm from the model's origin, mirrored already where asked.</summary>
/// <param name="Items">In the order of drawing: fills, thin lines, thick lines, bands, local parts, break lines.</param>
/// <param name="Parts">Every part seen in the window, in build order.</param>
/// <param name="Breaks">The break lines.</param>
/// <param name="Faults">What the drawn geometry could not keep: the sheet reports it, a larger scale usually cures it.</param>
/// <param name="Bounds">Around all items.</param>
public sealed record DrawnView(
    double Scale, bool Mirror, IReadOnlyList<Item> Items, IReadOnlyList<DrawnPart> Parts, IReadOnlyList<BreakLine> Breaks, IReadOnlyList<DrawingFault> Faults, PaperBox Bounds)
{
    /// <summary>The part of that id, or null where it lies outside the window.</summary>
    public DrawnPart? Part(string id) => Parts.FirstOrDefault(part => part.Id == id);

    /// <summary>Cut outlines, joints and edges beyond: what a leader crosses at a price.</summary>
    public IEnumerable<Stroke> Outlines => Items.OfType<Stroke>().Where(stroke => stroke.Row.StartsWith("cut.", StringComparison.Ordinal) || stroke.Row.StartsWith("beyond.", StringComparison.Ordinal));

    /// <summary>The place on paper of a model point.</summary>
    public PaperPoint At(Point model) => new((Mirror ? -model.X : model.X) / Scale, model.Y / Scale);
}

/// <summary>A part as it is seen.</summary>
/// <param name="Visible">What is left of it inside the window after bands cover it; for a sheet, its drawn band. Paper mm.</param>
/// <param name="FillAngle">Degrees of its first family of lines; null without.</param>
/// <param name="Variant">0 to 3: which of its fill's variants it took.</param>
/// <param name="Line">The drawn centre line of a sheet; empty for other parts.</param>
public sealed record DrawnPart(string Id, Part Part, Region Visible, double? FillAngle, int Variant, IReadOnlyList<PaperPoint> Line)
{
    public bool IsSheet => Line.Count > 0;
}

/// <summary>Where a construction is broken off.</summary>
/// <param name="RunId">Of the run that it ends.</param>
/// <param name="Vertical">Upright line across a roof.</param>
/// <param name="Zigzags">Middles of its zigzags, mm from <paramref name="From"/>.</param>
public sealed record BreakLine(string RunId, PaperPoint From, PaperPoint To, bool Vertical, IReadOnlyList<double> Zigzags);

/// <summary>Something that cannot be drawn as it should be.</summary>
/// <param name="Rule">Id in the reviewer's list, such as <c>sheet-merge</c>.</param>
/// <param name="Parts">Ids.</param>
public sealed record DrawingFault(string Rule, IReadOnlyList<string> Parts, string Reason);
