using DetailGen.Dxf.Document;
using DetailGen.Dxf.Entities;

namespace DetailGen.Dxf.Writing;

/// <summary>A place where entities lie (model space, a sheet, a block, a dimension's picture), with the handles of its records.</summary>
internal sealed class PlannedSpace(string name)
{
    public const string Model = "*Model_Space";
    public const string FirstSheet = "*Paper_Space";

    /// <summary>Name of the block that stands for the space.</summary>
    public string Name { get; } = name;

    /// <summary>Cleaned and checked.</summary>
    public List<Entity> Entities { get; } = [];

    /// <summary>What the entities cover, texts included.</summary>
    public Bounds Extents { get; } = new();

    /// <summary>Of the entities, in step with them. An insert's fields and their end mark take the handles that follow.</summary>
    public List<int> Handles { get; } = [];

    /// <summary>What the space is made from, if it is a block of the document.</summary>
    public Block? Block { get; init; }

    /// <summary>What the space is made from, if it is a sheet.</summary>
    public Sheet? Sheet { get; init; }

    /// <summary>True for the block that holds a dimension's picture.</summary>
    public bool IsPicture { get; init; }

    /// <summary>Handle of the BLOCK_RECORD, which owns everything here.</summary>
    public int Record { get; set; }

    public int Begin { get; set; }

    public int End { get; set; }

    /// <summary>Handle of the LAYOUT; 0 for blocks.</summary>
    public int Layout { get; set; }

    /// <summary>Handles of the viewports, the sheet's own first.</summary>
    public List<int> Viewports { get; } = [];

    /// <summary>Handles of the definitions of fields.</summary>
    public List<int> Fields { get; } = [];

    /// <summary>Model space and the first sheet lie in ENTITIES, everything else in its block.</summary>
    public bool LiesInEntities => Name is Model or FirstSheet;
}
