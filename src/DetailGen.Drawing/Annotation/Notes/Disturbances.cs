using System.Runtime.CompilerServices;

namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>Which ways of a note a place of another disturbs: the same are asked for again and again, so each is worked out once.</summary>
internal sealed class Disturbances
{
    private readonly Dictionary<(HeldNote, HeldNote[]), bool[]> _known = new(SameObjects.Only);

    /// <returns>One for each way.</returns>
    internal bool[] Of(HeldNote place, HeldNote[] ways)
    {
        if (!_known.TryGetValue((place, ways), out var disturbed))
        {
            disturbed = Array.ConvertAll(ways, place.Disturbs);
            _known.Add((place, ways), disturbed);
        }

        return disturbed;
    }

    /// <summary>Objects are told apart by what they are, not by what they say: that is soon done.</summary>
    private sealed class SameObjects : IEqualityComparer<(HeldNote Place, HeldNote[] Ways)>
    {
        internal static readonly SameObjects Only = new();

        public bool Equals((HeldNote Place, HeldNote[] Ways) one, (HeldNote Place, HeldNote[] Ways) other) => ReferenceEquals(one.Place, other.Place) && ReferenceEquals(one.Ways, other.Ways);

        public int GetHashCode((HeldNote Place, HeldNote[] Ways) one) => HashCode.Combine(RuntimeHelpers.GetHashCode(one.Place), RuntimeHelpers.GetHashCode(one.Ways));
    }
}
