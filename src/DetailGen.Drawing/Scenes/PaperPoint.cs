namespace DetailGen.Drawing.Scenes;

/// <summary>A place on paper in mm, y upwards. In a view it is relative to the view's origin (model origin over the scale), on a page to the lower left corner of the trimmed sheet.</summary>
public readonly record struct PaperPoint(double X, double Y)
{
    public static PaperPoint operator +(PaperPoint a, PaperPoint b) => new(a.X + b.X, a.Y + b.Y);

    public static PaperPoint operator -(PaperPoint a, PaperPoint b) => new(a.X - b.X, a.Y - b.Y);

    public static PaperPoint operator *(double factor, PaperPoint a) => new(factor * a.X, factor * a.Y);

    public double Length => Math.Sqrt(X * X + Y * Y);
}

/// <summary>An upright rectangle on paper, mm.</summary>
public readonly record struct PaperBox(double Left, double Bottom, double Right, double Top)
{
    public double Width => Right - Left;

    public double Height => Top - Bottom;

    public bool Meets(PaperBox other, double slack = 0) =>
        Left < other.Right + slack && other.Left < Right + slack && Bottom < other.Top + slack && other.Bottom < Top + slack;

    /// <summary>Whether all of the other lies within.</summary>
    public bool Holds(PaperBox other) => other.Left >= Left && other.Right <= Right && other.Bottom >= Bottom && other.Top <= Top;

    public PaperBox Grow(double by) => new(Left - by, Bottom - by, Right + by, Top + by);

    public PaperBox With(PaperBox other) =>
        new(Math.Min(Left, other.Left), Math.Min(Bottom, other.Bottom), Math.Max(Right, other.Right), Math.Max(Top, other.Top));

    public PaperBox Shift(PaperPoint by) => new(Left + by.X, Bottom + by.Y, Right + by.X, Top + by.Y);
}
