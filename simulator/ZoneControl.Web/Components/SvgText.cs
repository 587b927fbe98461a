using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;

namespace ZoneControl.Web.Components;

/// <summary>A text element of a drawing. Razor keeps the tag name "text" for itself, so it is built by hand here, once.</summary>
public sealed class SvgText : ComponentBase
{
    /// <summary>Place from the left, with its unit.</summary>
    [Parameter, EditorRequired]
    public string X { get; set; } = "0";

    /// <summary>Base line from the top, px.</summary>
    [Parameter, EditorRequired]
    public int Y { get; set; }

    /// <summary>Shift to the right, px.</summary>
    [Parameter]
    public int Dx { get; set; }

    /// <summary>Class in the style sheet.</summary>
    [Parameter]
    public string Class { get; set; } = "";

    /// <summary>What it says.</summary>
    [Parameter, EditorRequired]
    public string Says { get; set; } = "";

    /// <inheritdoc/>
    protected override void BuildRenderTree(RenderTreeBuilder builder)
    {
        ArgumentNullException.ThrowIfNull(builder);
        builder.OpenElement(0, "text");
        builder.AddAttribute(1, "class", Class);
        builder.AddAttribute(2, "x", X);
        builder.AddAttribute(3, "y", Y);
        builder.AddAttribute(4, "dx", Dx);
        builder.AddContent(5, Says);
        builder.CloseElement();
    }
}
