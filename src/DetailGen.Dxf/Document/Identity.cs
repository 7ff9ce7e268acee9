namespace DetailGen.Dxf.Document;

/// <summary>What tells one drawing from another. The file's ids and dates are made from it, never from a clock.</summary>
/// <param name="Date">Of issue, from the title block; null for none.</param>
public sealed record Identity(string Project, string Number, DateOnly? Date)
{
    public static Identity None { get; } = new("", "", null);
}
