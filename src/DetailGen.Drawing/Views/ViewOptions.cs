using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <summary>How a section is to be drawn.</summary>
/// <param name="Scale">s of 1:s.</param>
/// <param name="Window">Where the drawing breaks off, in model mm, unmirrored. Only sides on which a construction runs on cut anything.</param>
/// <param name="Mirror">Reflected before anything is made; fill angles stay.</param>
public sealed record ViewOptions(double Scale, Bounds Window, bool Mirror = false);
