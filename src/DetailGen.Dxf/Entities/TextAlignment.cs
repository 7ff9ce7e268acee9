namespace DetailGen.Dxf.Entities;

/// <summary>Where along the base line the anchor lies.</summary>
public enum Across
{
    Left = 0,
    Centre = 1,
    Right = 2,
}

/// <summary>Where across the letters the anchor lies. There is no foot of the descenders: readers differ about it.</summary>
public enum Upright
{
    BaseLine = 0,
    Middle = 2,
    Top = 3,
}

/// <summary>Where the anchor lies in a block of lines, row by row from the top left.</summary>
public enum Attachment
{
    TopLeft = 1,
    TopCentre = 2,
    TopRight = 3,
    MiddleLeft = 4,
    MiddleCentre = 5,
    MiddleRight = 6,
    BottomLeft = 7,
    BottomCentre = 8,
    BottomRight = 9,
}
