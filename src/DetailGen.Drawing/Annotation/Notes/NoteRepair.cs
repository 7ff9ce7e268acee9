using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>A note as it might stand: in a column, led in one way.</summary>
/// <param name="Width">Of the column's widest block.</param>
internal sealed record HeldNote(Block Block, Column Column, double Width, Option Option, double ShortestLeader)
{
    private readonly PaperPoint _bend = Option.BendAt(Column.Side);

    /// <summary>Where the shoulder meets the text.</summary>
    private readonly PaperPoint _start = Option.BendAt(Column.Side) + new PaperPoint(Column.Side * (Option.Setback + Column.Shoulder), 0);

    private readonly PaperBox _clear = Column.Box(Block, Option.Level, Width).Grow(Options.TipGap);

    internal string Id => Block.Note.Id;

    /// <summary>It has no words.</summary>
    internal bool IsNumber => Block.Note.Words.Length == 0;

    /// <summary>The strip of its text.</summary>
    internal PaperBox Box { get; } = Column.Box(Block, Option.Level, Width);

    /// <summary>Around text and leader, with the white that belongs to them.</summary>
    internal PaperBox Whole { get; } = Surface.Around(Option.BendAt(Column.Side), Option.Tip).With(Column.Box(Block, Option.Level, Width)).Grow(Column.Gap);

    internal double BendX => _bend.X;

    /// <summary>Whether the two cannot stand on one sheet.</summary>
    internal bool Disturbs(HeldNote other) =>
        OutOfLine(other)
        || (Whole.Meets(other.Whole)
        && (Lines.Gap(Box, other.Box) < Column.Gap - 1e-9 || (Option.Tip - other.Option.Tip).Length < Options.TipsApart || Runs(other) || other.Runs(this)
            || Lines.Near(_bend, Option.Tip, other._bend, other.Option.Tip, Options.TipGap)
            || Lines.Near(_start, _bend, other._start, other._bend, Options.TipGap)));

    /// <summary>Notes whose leaders bend on one line are read as one column, so blocks of two columns must not.</summary>
    private bool OutOfLine(HeldNote other) =>
        MayBendLike(other.BendX) && Column.Side == other.Column.Side && Column.Id != other.Column.Id;

    internal bool MayBendLike(double bendX) => Math.Abs(_bend.X - bendX) < 0.15;

    /// <summary>Whether this one's leader comes too near the other's text or shoulder.</summary>
    private bool Runs(HeldNote other) =>
        Lines.Meets(other._clear, _bend, Option.Tip) || Lines.Meets(other._clear, _start, _bend)
        || Lines.Near(_bend, Option.Tip, other._start, other._bend, Options.TipGap);
}

/// <summary>
/// Finds places for notes that disturb each other: each in turn takes the place where it disturbs the fewest others, and those that it disturbs look for another place, which may be
/// in another column. A note that was sent away often weighs more, so that the search does not go in circles. Work is counted in steps.
/// </summary>
internal sealed class NoteRepair
{
    private readonly Dictionary<string, HeldNote[]> _ways;
    private readonly Dictionary<string, double> _weights;
    private readonly Disturbances _disturbances;
    private readonly Func<string, HeldNote[]>? _inNeed;
    private readonly HashSet<string> _asked = new(StringComparer.Ordinal);

    // By way of the note in hand; kept, for it is wanted thousands of times.
    private double[] _disturbed = [];

    /// <param name="ways">All that each note might do, by id; what it might do in need is added where it was asked for.</param>
    /// <param name="inNeed">What else a note might do when another sends it away, all of it dearer than <see cref="Weights.Number"/>: to work it out for those that stay is most of the work.</param>
    internal NoteRepair(Dictionary<string, HeldNote[]> ways, Disturbances disturbances, Func<string, HeldNote[]>? inNeed = null)
    {
        (_disturbances, _inNeed) = (disturbances, inNeed);
        _ways = ways;
        _weights = ways.ToDictionary(one => one.Key, _ => 1.0, StringComparer.Ordinal);
    }

    /// <summary>The notes that can stand together: as many as were found, none disturbing another.</summary>
    internal List<HeldNote> Solve(IReadOnlyList<HeldNote> standing, int mostSteps)
    {
        var held = standing.ToList();
        var waiting = new List<string>(_ways.Keys.Where(id => !held.Exists(one => one.Id == id)).OrderBy(id => _ways[id].Length).ThenBy(id => id, StringComparer.Ordinal));
        var best = held.ToArray();
        for (var step = 0; step < mostSteps && waiting.Count > 0; step++)
        {
            var id = waiting[0];
            waiting.RemoveAt(0);
            if (Least(id, held) is not { } way)
            {
                continue;
            }

            var stay = 0;
            for (var i = 0; i < held.Count; i++)
            {
                var other = held[i];
                if (way.Disturbs(other))
                {
                    waiting.Add(other.Id);
                    _weights[other.Id]++;
                }
                else
                {
                    held[stay++] = other;
                }
            }

            held.RemoveRange(stay, held.Count - stay);
            held.Add(way);
            best = held.Count > best.Length ? [.. held] : best;
        }

        return [.. best];
    }

    /// <summary>What a note might do; what costs as much as the price may be missing.</summary>
    internal HeldNote[] Ways(string id, double price)
    {
        if (_inNeed is not null && price > Weights.Number && _asked.Add(id))
        {
            _ways[id] = [.. _ways[id], .. _inNeed(id)];
        }

        return _ways[id];
    }

    private HeldNote? Least(string id, List<HeldNote> held)
    {
        var ways = Ways(id, double.MaxValue);
        if (ways.Length == 0)
        {
            return null;
        }

        _disturbed = _disturbed.Length < ways.Length ? new double[ways.Length] : _disturbed;
        var weights = _disturbed.AsSpan(0, ways.Length);
        weights.Clear();
        foreach (var other in held)
        {
            var weight = _weights[other.Id];
            foreach (var i in _disturbances.Of(other, ways))
            {
                weights[i] += weight;
            }
        }

        var best = 0;
        for (var i = 1; i < weights.Length; i++)
        {
            best = weights[i] < weights[best] || (weights[i] == weights[best] && ways[i].Option.Cost < ways[best].Option.Cost) ? i : best;
        }

        return ways[best];
    }

    /// <summary>Each note in turn to the cheapest place that the others leave.</summary>
    internal List<HeldNote> Settled(List<HeldNote> held)
    {
        for (var round = 0; round < 2; round++)
        {
            foreach (var id in held.Select(one => one.Id).OrderBy(id => id, StringComparer.Ordinal).ToArray())
            {
                var at = held.FindIndex(one => one.Id == id);
                var own = held[at];
                held.RemoveAt(at);
                held.Add(Cheaper(own, held));
            }
        }

        return held;
    }

    /// <summary>The cheapest place that the others leave a note; its own where there is none cheaper.</summary>
    private HeldNote Cheaper(HeldNote own, List<HeldNote> others)
    {
        var ways = Ways(own.Id, own.Option.Cost);
        var isTaken = _disturbances.Taken(ways, others);
        var best = own;
        for (var i = 0; i < ways.Length; i++)
        {
            best = !isTaken[i] && ways[i].Option.Cost < best.Option.Cost ? ways[i] : best;
        }

        return best;
    }
}
