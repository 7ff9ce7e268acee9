using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Emitters.Plain;

/// <summary>A format that knows lines, fills and letters only: everything richer reaches it taken apart.</summary>
internal interface ISink
{
    /// <summary>What follows is relative to the placement's origin and seen within its window.</summary>
    void EnterView(Placement placement);

    void LeaveView();

    void OpenGroup(string name);

    void CloseGroup();

    void Line(LayerRow row, string? part, IReadOnlyList<PaperPoint> points, bool closed);

    void Ring(LayerRow row, string? part, PaperPoint centre, double diameter);

    void Area(LayerRow row, string? part, IReadOnlyList<PaperPoint> outline, IReadOnlyList<IReadOnlyList<PaperPoint>> holes);

    void Dots(LayerRow row, string? part, IReadOnlyList<PaperPoint> centres, double diameter);

    void Fill(LayerRow row, string? part, string name, List<Segment> strokes);

    void Words(LayerRow row, Text text);
}
