namespace DetailGen.Drawing.Emitters.Plain;

/// <summary>A straight piece of a fill, paper mm.</summary>
internal readonly record struct Segment(double FromX, double FromY, double ToX, double ToY)
{
    public double Length => Math.Sqrt((ToX - FromX) * (ToX - FromX) + (ToY - FromY) * (ToY - FromY));
}
