using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Annotation;

/// <summary>
/// The lines of the drawn parts, by the directions that leaders and stems have: one that runs along an edge or in a joint is read as part of the drawing.
/// Asked for every way of every leader.
/// </summary>
internal sealed class DrawnLines
{
    /// <summary>Nearer than this to a line a leader cannot be told from it, mm.</summary>
    private const double Apart = 0.7;

    /// <summary>So far they may keep together, mm.</summary>
    private const double Most = 2;

    /// <summary>Along shorter ones nothing runs for long, mm.</summary>
    private const double Least = 2;

    private static readonly double Flat = Math.Sin(8 * Math.PI / 180);

    private static readonly PaperPoint[] Ways = [.. new double[] { 0, 30, 45, 60, 75, 90, 105, 120, 135, 150 }.Select(degrees => degrees * Math.PI / 180).Select(angle => new PaperPoint(Math.Cos(angle), Math.Sin(angle)))];

    private readonly Line[][] _byWay;
    private readonly double[] _widest;

    internal DrawnLines(IEnumerable<(PaperPoint From, PaperPoint To)> lines)
    {
        var edges = lines.Where(line => (line.To - line.From).Length >= Least).Distinct().ToArray();
        _byWay = Array.ConvertAll(Ways, way => edges.Where(line => Math.Abs(Cross(way, line.To - line.From)) < Flat * (line.To - line.From).Length).Select(line => Of(line, way)).OrderBy(line => line.Middle).ToArray());
        _widest = Array.ConvertAll(_byWay, family => family.Select(line => Math.Abs(line.ToAcross - line.FromAcross) / 2).DefaultIfEmpty(0).Max());
    }

    /// <summary>Whether a straight run keeps along one of them.</summary>
    internal bool RunAlong(PaperPoint from, PaperPoint to) => (to - from).Length is > 0 and var length && Reach(from, (1 / length) * (to - from)) < length;

    /// <summary>How far a way (of length 1) may go before it has kept along one of them for too long.</summary>
    internal double Reach(PaperPoint from, PaperPoint way)
    {
        var (family, least) = (0, double.MaxValue);
        for (var i = 0; i < Ways.Length; i++)
        {
            var off = Math.Abs(Cross(Ways[i], way));
            (family, least) = off < least ? (i, off) : (family, least);
        }

        var (frame, lines, gap) = (Ways[family], _byWay[family], Apart + _widest[family]);
        var (along, across, forth) = (Dot(frame, from), Cross(frame, from), Dot(frame, way) > 0);
        var reach = double.MaxValue;
        for (var i = First(lines, across - gap); i < lines.Length && lines[i].Middle <= across + gap; i++)
        {
            var (low, high) = lines[i].Near(across);
            var (start, end) = forth ? (Math.Max(low - along, 0), high - along) : (Math.Max(along - high, 0), along - low);
            reach = end - start > Most ? Math.Min(reach, start + Most) : reach;
        }

        return reach;
    }

    private static int First(Line[] lines, double least)
    {
        var (low, high) = (0, lines.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = lines[middle].Middle < least ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    private static Line Of((PaperPoint From, PaperPoint To) line, PaperPoint way)
    {
        var (from, to) = Dot(way, line.From) <= Dot(way, line.To) ? (line.From, line.To) : (line.To, line.From);
        return new(Dot(way, from), Dot(way, to), Cross(way, from), Cross(way, to));
    }

    private static double Dot(PaperPoint a, PaperPoint b) => a.X * b.X + a.Y * b.Y;

    private static double Cross(PaperPoint a, PaperPoint b) => a.X * b.Y - a.Y * b.X;

    /// <summary>A line in the frame of a direction: along it and across it.</summary>
    private readonly record struct Line(double From, double To, double FromAcross, double ToAcross)
    {
        internal double Middle => (FromAcross + ToAcross) / 2;

        /// <summary>The stretch along which it keeps near a level of that frame; its ends change places where it does not.</summary>
        internal (double Low, double High) Near(double across)
        {
            if (Math.Abs(ToAcross - FromAcross) < 1e-9)
            {
                return Math.Abs(FromAcross - across) < Apart ? (From, To) : (To, From);
            }

            var slope = (To - From) / (ToAcross - FromAcross);
            var (a, b) = (From + (across - Apart - FromAcross) * slope, From + (across + Apart - FromAcross) * slope);
            return (Math.Max(From, Math.Min(a, b)), Math.Min(To, Math.Max(a, b)));
        }
    }
}
