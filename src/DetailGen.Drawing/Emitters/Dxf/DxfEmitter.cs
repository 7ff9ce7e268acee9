using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Emitters.Dxf;

internal sealed class DxfEmitter : IEmitter
{
    public string Extension => "dxf";

    public void Emit(Scene scene, Stream output) => throw new NotSupportedException();
}
