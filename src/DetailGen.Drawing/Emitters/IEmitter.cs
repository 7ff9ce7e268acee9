using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Emitters;

/// <summary>Writes a settled scene in one format. It looks nothing up and decides nothing.</summary>
internal interface IEmitter
{
    /// <summary>Without a point, such as <c>svg</c>.</summary>
    string Extension { get; }

    void Emit(Scene scene, Stream output);
}
