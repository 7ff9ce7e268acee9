namespace DetailGen.Cli.Terminal;

/// <summary>Where answers go and where messages go.</summary>
internal sealed record Screen(TextWriter Output, TextWriter Messages);
