namespace DetailGen.Dxf.Entities;

/// <summary>What an entity belongs to. The writer adds a digest of the entity beside it, so that edits can be told later.</summary>
/// <param name="Id">The part's stable id; at most 200 bytes, no control letters.</param>
public readonly record struct PartTag(string Id);
