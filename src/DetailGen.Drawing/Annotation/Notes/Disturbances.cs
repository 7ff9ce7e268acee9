using System.Runtime.CompilerServices;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>Which ways of a note a place of another disturbs: the same are asked for again and again, so each is worked out once.</summary>
internal sealed class Disturbances
{
    private readonly Dictionary<HeldNote[], Known> _known = new(SameArray.Only);
    private readonly List<int> _found = [];

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

    /// <summary>The ways that the others leave.</summary>
    internal HeldNote[] Undisturbed(HeldNote[] ways, List<HeldNote> others)
    {
        if (ways.Length == 0 || others.Count == 0)
        {
            return ways;
        }

        var isTaken = new bool[ways.Length];
        foreach (var other in others)
        {
            foreach (var i in Of(other, ways))
            {
                isTaken[i] = true;
            }
        }

        return [.. ways.Where((_, i) => !isTaken[i])];
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
