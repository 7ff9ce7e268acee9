namespace DetailGen.Dxf;

/// <summary>A box that grows around what is added to it; short-lived.</summary>
internal sealed class Bounds
{
    public double Left { get; private set; } = double.PositiveInfinity;
    public double Bottom { get; private set; } = double.PositiveInfinity;
    public double Right { get; private set; } = double.NegativeInfinity;
    public double Top { get; private set; } = double.NegativeInfinity;

    public void Clear()
    {
        (Left, Bottom) = (double.PositiveInfinity, double.PositiveInfinity);
        (Right, Top) = (double.NegativeInfinity, double.NegativeInfinity);
    }

    public bool IsEmpty => Left > Right;

    public void Add(DxfPoint point)
    {
        Left = Math.Min(Left, point.X);
        Right = Math.Max(Right, point.X);
        Bottom = Math.Min(Bottom, point.Y);
        Top = Math.Max(Top, point.Y);
    }

    public void Add(Bounds other, DxfPoint shift)
    {
        if (!other.IsEmpty)
        {
            Add(new DxfPoint(other.Left, other.Bottom) + shift);
            Add(new DxfPoint(other.Right, other.Top) + shift);
        }
    }

    /// <summary>A counter-clockwise arc; angles in degrees.</summary>
    public void AddArc(DxfPoint centre, double radius, double start, double end)
    {
        Add(centre + (radius * DxfPoint.Direction(start)));
        Add(centre + (radius * DxfPoint.Direction(end)));
        var sweep = (((end - start) % 360) + 360) % 360;
        for (var quarter = 0; quarter < 4; quarter++)
        {
            if (((((quarter * 90) - start) % 360) + 360) % 360 <= sweep)
            {
                Add(centre + (radius * DxfPoint.Direction(quarter * 90)));
            }
        }
    }

    public void AddPath(ReadOnlySpan<Vertex> path, bool closed)
    {
        for (var i = 0; i < path.Length; i++)
        {
            Add(path[i].Point);
            if (path[i].Bulge != 0 && (closed || i + 1 < path.Length))
            {
                AddBulge(path[i], path[(i + 1) % path.Length].Point);
            }
        }
    }

    /// <summary>A box of text: width along the base line, height across it, turned about its left end.</summary>
    public void AddText(DxfPoint leftEnd, double width, double height, double rotation)
    {
        foreach (var (along, across) in (ReadOnlySpan<(double, double)>)[(0, -0.3), (width, -0.3), (width, 1), (0, 1)])
        {
            Add(leftEnd + new DxfPoint(along, across * height).Turned(rotation)); // letters hang about 0.3 of their height below the base line
        }
    }

    private void AddBulge(Vertex from, DxfPoint to)
    {
        // With chord c and bulge b: the centre lies (1 - b²)/(4b)·c to the left of the chord's middle, r = c(1 + b²)/(4|b|).
        var chord = to - from.Point;
        var (b, middle) = (from.Bulge, 0.5 * (from.Point + to));
        var way = (1 - (b * b)) / (4 * b);
        var centre = middle + new DxfPoint(-chord.Y * way, chord.X * way);
        var radius = centre.DistanceTo(to);
        var (first, last) = b > 0 ? (from.Point, to) : (to, from.Point);
        AddArc(centre, radius, AngleOf(first - centre), AngleOf(last - centre));
    }

    private static double AngleOf(DxfPoint direction) => Math.Atan2(direction.Y, direction.X) * 180 / Math.PI;
}
