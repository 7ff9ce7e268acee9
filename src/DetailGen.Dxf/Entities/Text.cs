using DetailGen.Dxf.Tables;
using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Entities;

/// <summary>One line of letters. A blank one is left out. A caret is written with a blank behind it, <c>%%</c> with one between; outer blanks
/// go.</summary>
/// <param name="Content">At most 255 bytes of UTF-8, no control letters.</param>
/// <param name="Anchor">The point that <see cref="Across"/> and <see cref="Upright"/> speak of.</param>
/// <param name="Height">Height of capitals, in drawing units.</param>
/// <param name="Width">Measured width in drawing units. The left end of an aligned text follows from it, since some readers draw from there.</param>
public sealed record Text(string Content, DxfPoint Anchor, double Height, double Width) : Entity
{
    public Across Across { get; init; }

    public Upright Upright { get; init; }

    /// <summary>Degrees, counter-clockwise.</summary>
    public double Rotation { get; init; }

    /// <summary>Left end of the base line.</summary>
    public DxfPoint LeftEnd => IsAligned
        ? Anchor - new DxfPoint(Width * (int)Across / 2, Height * Upright switch { Upright.Top => 1, Upright.Middle => 0.5, _ => 0 }).Turned(Rotation)
        : Anchor;

    internal static readonly AttributeTable<Text> Table = new("TEXT")
    {
        "AcDbText",
        { 10, text => text.LeftEnd, Role.Derived },
        { 40, text => text.Height },
        { 1, text => DxfString.ForText(text.Content) },
        { 50, text => text.Rotation, Grid.Angle },
        { 41, 1 },
        { 7, _ => TextStyle.Name, Role.Derived },
        { 72, text => (int)text.Across },
        { 11, text => text.Anchor, Role.Value, text => text.IsAligned },
        "AcDbText", // twice: 73 stands under the second
        { 73, text => (int)text.Upright, Role.Value, text => text.Upright != Upright.BaseLine },
    };

    internal override string Kind => Table.Kind;

    private bool IsAligned => Across != Across.Left || Upright != Upright.BaseLine;

    internal override Entity? Cleaned()
    {
        DemandPositive(Height, "text's height");
        if (string.IsNullOrWhiteSpace(Content))
        {
            return null;
        }

        DemandPositive(Width, "text's width"); // a reader that starts at the left end would misplace the text
        return this;
    }

    internal override void Walk(ITagSink sink) => Table.Walk(this, sink);

    internal override void Extend(Bounds bounds) => bounds.AddText(LeftEnd, Width, Height, Rotation);
}
