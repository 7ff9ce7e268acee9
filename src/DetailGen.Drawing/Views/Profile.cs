namespace DetailGen.Drawing.Views;

/// <summary>How high a sheet lies above its face along the face: plateaus, and slopes of one in one between them. Paper mm.</summary>
internal sealed class Profile(double floor)
{
    private readonly List<(double From, double To, double Height)> _plateaus = [];

    public double Floor => floor;

    public IReadOnlyList<(double From, double To, double Height)> Plateaus => _plateaus;

    public void Add(double from, double to, double height)
    {
        if (height > floor + 1e-9)
        {
            _plateaus.Add((from, to, height));
        }
    }

    public double At(double s)
    {
        var height = floor;
        foreach (var (from, to, top) in _plateaus)
        {
            height = Math.Max(height, top - Math.Max(0, Math.Max(from - s, s - to)));
        }

        return height;
    }

    /// <summary>Places where the slope changes, in order, between the ends.</summary>
    public List<double> Turns(double start, double end)
    {
        // Every piece is a straight line; where the upper hull turns is an end of a plateau or slope, or a crossing of two slopes.
        var turns = new List<double>();
        foreach (var (from, to, height) in _plateaus)
        {
            turns.AddRange([from, to, from - (height - floor), to + (height - floor)]);
            foreach (var (otherFrom, otherTo, other) in _plateaus)
            {
                turns.AddRange([from - (height - other), to + (height - other), ((to + height) + (otherFrom - other)) / 2]);
            }
        }

        turns.RemoveAll(s => s <= start + 1e-6 || s >= end - 1e-6);
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
            var before = i == 0 ? start : kept[i - 1];
            var after = i == kept.Count - 1 ? end : kept[i + 1];
            return Math.Abs((At(s) - At(before)) / (s - before) - (At(after) - At(s)) / (after - s)) > 1e-6;
        })];
    }
}
