namespace DetailGen.Library;

/// <summary>What this project says to people.</summary>
internal static class Messages
{
    internal static string CannotWrite(string folder, string reason) => $"The files could not be written to {folder}: {reason.TrimEnd('.')}. Nothing was left behind.";
}
