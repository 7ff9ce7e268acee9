using System.Runtime.CompilerServices;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>Which ways of a note a place of another disturbs: the same are asked for again and again, so each is worked out once.</summary>
internal sealed class Disturbances
{
    private readonly Dictionary<HeldNote[], Known> _known = new(SameArray.Only);
    private readonly List<int> _found = [];
    private bool[] _taken = [];

    /// <returns>Where they stand among the ways, in order; mostly few.</returns>
    internal int[] Of(HeldNote place, HeldNote[] ways)
    {
        if (!_known.TryGetValue(ways, out var known))
        {
            _known.Add(ways, known = new(ways));
        }

        if (!known.By.TryGetValue(place, out var disturbed))
        {
            _found.Clear();
            var whole = place.Whole;
            for (var i = 0; i < ways.Length; i++)
            {
                if ((whole.Meets(known.Wholes[i]) || place.MayBendLike(known.Bends[i])) && place.Disturbs(ways[i]))
                {
                    _found.Add(i);
                }
            }

            disturbed = [.. _found];
            known.By.Add(place, disturbed);
        }

        return disturbed;
    }

    /// <summary>Whether any of the others disturbs them, way by way; good until it is asked again.</summary>
    internal ReadOnlySpan<bool> Taken(HeldNote[] ways, List<HeldNote> others)
    {
        _taken = _taken.Length < ways.Length ? new bool[ways.Length] : _taken;
        var taken = _taken.AsSpan(0, ways.Length);
        taken.Clear();
        foreach (var other in others)
        {
            foreach (var i in Of(other, ways))
            {
                taken[i] = true;
            }
        }

        return taken;
    }

    /// <summary>The ways that the others leave.</summary>
    internal HeldNote[] Undisturbed(HeldNote[] ways, List<HeldNote> others)
    {
        if (ways.Length == 0 || others.Count == 0)
        {
            return ways;
        }

        var taken = Taken(ways, others);
        var left = new List<HeldNote>(ways.Length);
        for (var i = 0; i < ways.Length; i++)
        {
            if (!taken[i])
            {
                left.Add(ways[i]);
            }
        }

        return [.. left];
    }

    /// <summary>What most ways are seen from to be out of reach lies side by side.</summary>
    private sealed class Known(HeldNote[] ways)
    {
        internal PaperBox[] Wholes { get; } = Array.ConvertAll(ways, way => way.Whole);

        internal double[] Bends { get; } = Array.ConvertAll(ways, way => way.BendX);

        internal Dictionary<HeldNote, int[]> By { get; } = new(ReferenceEqualityComparer.Instance);
    }

    /// <summary>Arrays are told apart by what they are, not by what they hold.</summary>
    private sealed class SameArray : IEqualityComparer<HeldNote[]>
    {
        internal static readonly SameArray Only = new();

        public bool Equals(HeldNote[]? one, HeldNote[]? other) => ReferenceEquals(one, other);

        public int GetHashCode(HeldNote[] one) => RuntimeHelpers.GetHashCode(one);
    }
}
