using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Writing;

/// <summary>Finds the lower left corner of the places that entities name: it goes where they go.</summary>
internal sealed class CornerSink : ITagSink
{
    private double _left = double.PositiveInfinity;
    private double _bottom = double.PositiveInfinity;

    public bool ValuesOnly => true;

    /// <summary>The origin where no place was named.</summary>
    public DxfPoint Corner => double.IsInfinity(_left) ? default : new(_left, _bottom);

    public void Marker(string name)
    {
        // No place.
    }

    public void Number(int code, double value, Grid grid)
    {
        // No place.
    }

    public void Place(int xCode, int yCode, DxfPoint place) => (_left, _bottom) = (Math.Min(_left, place.X), Math.Min(_bottom, place.Y));

    public void Integer(int code, int value)
    {
        // No place.
    }

    public void Text(int code, string value)
    {
        // No place.
    }
}
