using System.Net;

namespace StarterCtl.App.Reporting;

/// <summary>Text that is HTML already and is not escaped again.</summary>
/// <param name="Html">The markup.</param>
internal sealed record Markup(string Html)
{
    /// <summary>Escapes everything that did not come as markup.</summary>
    public static string Of(object? argument) => argument switch
    {
        null => "",
        Markup markup => markup.Html,
        double number => WebUtility.HtmlEncode(Quantity.Plain(number)),
        _ => WebUtility.HtmlEncode(argument.ToString() ?? ""),
    };
}
