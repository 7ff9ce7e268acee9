namespace DetailGen.Sections;

/// <summary>What lies beside a sheet; it decides where the extra width goes that a thin sheet gets on paper.</summary>
public enum Seat
{
    /// <summary>Solid on the right of the face, air on the left: the extra width grows to the left.</summary>
    Face,

    /// <summary>Solid on both sides: drawn centred on the interface.</summary>
    Between,
}

/// <summary>How a sheet material is laid: along a face, on its left-hand side, over the sheets laid there before.</summary>
/// <param name="Face">
/// The face of the substrate that the sheet covers, as an open polyline in mm, as if no other sheet were there; travelling along it the sheet lies on the left.
/// Two sheets in a lap share that stretch of face, and <paramref name="Over"/> says which is under which.
/// </param>
/// <param name="Thickness">True thickness in mm.</param>
/// <param name="Over">Ids of the sheets laid earlier that this one runs over wherever their faces coincide, lowest first.</param>
public sealed record Sheet(IReadOnlyList<Point> Face, double Thickness, IReadOnlyList<string> Over, Seat Seat = Seat.Face);
