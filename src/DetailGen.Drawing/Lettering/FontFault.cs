namespace DetailGen.Drawing.Lettering;

/// <summary>Why the letters of a file cannot be used.</summary>
public enum FontFault
{
    None,

    /// <summary>No font file at all, or one that is packed for web pages.</summary>
    NotTrueType,

    /// <summary>Several fonts in one file.</summary>
    Collection,

    /// <summary>Outlines of the other kind (CFF), which cannot be cut down to the letters that a PDF needs.</summary>
    OtherOutlines,

    /// <summary>Tables are missing, lie outside the file or contradict each other.</summary>
    Damaged,

    /// <summary>The font is not put together by Unicode, such as one of symbols.</summary>
    NoUnicode,

    /// <summary>No name that files could call it by.</summary>
    NoName,

    /// <summary>The font's own licence flags keep it out of documents.</summary>
    NotToBeEmbedded,

    /// <summary>Capitals, letters or their widths are beyond what a sheet can be laid out with.</summary>
    Proportions,
}
