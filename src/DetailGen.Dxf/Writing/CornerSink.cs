using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Writing;

/// <summary>Finds the lower left corner of the places that entities name: it goes where they go.</summary>
internal sealed class CornerSink : ITagSink
{
    private double left = double.PositiveInfinity;
    private double bottom = double.PositiveInfinity;

    public bool ValuesOnly => true;

    /// <summary>The origin where no place was named.</summary>
    public DxfPoint Corner => double.IsInfinity(left) ? default : new(left, bottom);

    public void Marker(string name)
    {
        // No place.
    }

    public void Number(int code, double value, Grid grid)
    {
        // No place.
    }

    public void Place(int xCode, int yCode, DxfPoint place) => (left, bottom) = (Math.Min(left, place.X), Math.Min(bottom, place.Y));

    public void Integer(int code, int value)
    {
        // No place.
    }

    public void Text(int code, string value)
    {
        // No place.
    }
}
