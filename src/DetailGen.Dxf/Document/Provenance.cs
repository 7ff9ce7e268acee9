namespace DetailGen.Dxf.Document;

/// <summary>How the drawing came about, kept inside it with a digest of its content, so that it can be made again and edits can be told.</summary>
/// <param name="Parameters">The canonical preset as JSON.</param>
/// <param name="Tool">Name of the tool and version of this record's format, such as <c>detailgen 1</c>; no build number, it would change the bytes.</param>
public sealed record Provenance(string Parameters, string Tool)
{
    /// <summary>The name under which the records and the entities' parts are kept.</summary>
    public const string Application = "DETAILGEN";
}
