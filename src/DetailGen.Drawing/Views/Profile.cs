namespace DetailGen.Drawing.Views;

/// <summary>
/// How high a sheet lies above its face along the face: plateaus, and slopes of one in one between them. Paper mm. A plateau works between the
/// corners of its face: round a corner a sheet takes its new height in the mitre and needs no ramp.
/// </summary>
internal sealed class Profile(double floor)
{
    private const double Room = 0.5, Nearest = 0.02;

    private readonly List<Plateau> _plateaus = [];

    public double Floor => floor;

    public IReadOnlyList<Plateau> Plateaus => _plateaus;

    /// <summary>Raises the sheet between two places; without effect outside the reach.</summary>
    /// <param name="truly">How high it lies there in truth: as thick as what it lies over.</param>
    public void Add(double from, double to, double height, (double From, double To) reach, double truly = 0)
    {
        if (height > floor + 1e-9)
        {
            // Without room for its whole slope before a corner, a sheet keeps its height up to the corner.
            from = from - (height - floor) < reach.From + Room ? Math.Min(from, reach.From) : from;
            to = to + (height - floor) > reach.To - Room ? Math.Max(to, reach.To) : to;
            _plateaus.Add(new(from, to, height, reach.From, reach.To, Math.Max(0, Math.Min(truly, height))));
        }
    }

    public double At(double s)
    {
        var height = floor;
        foreach (var plateau in _plateaus)
        {
            if (s >= plateau.Lowest && s <= plateau.Highest)
            {
                height = Math.Max(height, plateau.Height - Math.Max(0, Math.Max(plateau.From - s, s - plateau.To)));
            }
        }

        return height;
    }

    /// <summary>Places where the slope changes, in order, between two places of one straight piece.</summary>
    public List<double> Turns(double start, double end)
    {
        var turns = new List<double>();
        if (_plateaus.Count == 0)
        {
            return turns;
        }

        // Every piece is a straight line; where the upper hull turns is an end of a plateau or slope, or a crossing of two slopes.
        foreach (var plateau in _plateaus)
        {
            turns.AddRange([plateau.From, plateau.To, plateau.From - (plateau.Height - floor), plateau.To + (plateau.Height - floor)]);
            foreach (var other in _plateaus)
            {
                turns.AddRange([
                    plateau.From - (plateau.Height - other.Height), plateau.To + (plateau.Height - other.Height),
                    ((plateau.To + plateau.Height) + (other.From - other.Height)) / 2]);
            }
        }

        turns.RemoveAll(s => s <= start + Nearest || s >= end - Nearest); // two turns within a hair of each other cannot both be mitred
        turns.Sort();
        var kept = new List<double>();
        foreach (var s in turns)
        {
            if (kept.Count == 0 || s - kept[^1] > 1e-6)
            {
                kept.Add(s);
            }
        }

        return [.. kept.Where((s, i) =>
        {
            var before = i == 0 ? start + 1e-7 : kept[i - 1];
            var after = i == kept.Count - 1 ? end - 1e-7 : kept[i + 1];
            return Math.Abs((At(s) - At(before)) / (s - before) - (At(after) - At(s)) / (after - s)) > 1e-6;
        })];
    }
}

/// <summary>A stretch of a face along which the drawn height is the same.</summary>
/// <param name="From">Along the face, mm.</param>
/// <param name="Lowest">The corner before, where its influence ends; <paramref name="Highest"/> the corner after.</param>
/// <param name="True">Height in truth, to the paper's scale.</param>
internal sealed record Plateau(double From, double To, double Height, double Lowest, double Highest, double True);
