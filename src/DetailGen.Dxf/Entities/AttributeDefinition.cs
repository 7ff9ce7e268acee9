namespace DetailGen.Dxf.Entities;

/// <summary>A field of a block, such as a cell of a title block. Its text is left-aligned on its base line.</summary>
/// <param name="Tag">Capitals, digits, hyphens and underscores.</param>
/// <param name="Position">Left end of the base line, in the block's axes.</param>
/// <param name="Height">Height of capitals, in drawing units.</param>
public sealed record AttributeDefinition(string Tag, DxfPoint Position, double Height)
{
    /// <summary>What a program asks for when it fills the field; the tag if empty.</summary>
    public string Prompt { get; init; } = "";

    /// <summary>The layer of the field and of its values; null for 0, so that values take the layer of their insert.</summary>
    public string? Layer { get; init; }

    /// <exception cref="ArgumentException">A tag out of shape, or no height.</exception>
    internal void Demand()
    {
        if (Tag.Length is 0 or > 31 || !Tag.All(letter => letter is (>= 'A' and <= 'Z') or (>= '0' and <= '9') or '-' or '_'))
        {
            throw new ArgumentException($"'{Tag}' cannot be the tag of a field: capitals, digits, hyphens and underscores, at most 31.");
        }

        if (!(Height > 0))
        {
            throw new ArgumentException($"The field {Tag} has no height.");
        }
    }
}

/// <summary>What a field of one insert says.</summary>
/// <param name="Value">At most 255 bytes of UTF-8; may be empty.</param>
/// <param name="Height">Height of capitals where it differs from the field's, as for a long value.</param>
public sealed record AttributeValue(string Tag, string Value, double? Height = null);
