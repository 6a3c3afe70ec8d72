using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace StarterCtl.App.Json;

/// <summary>One way to write JSON: camel case, enumerations by name, indented.</summary>
public static class JsonText
{
    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = true,
        NewLine = "\n",
        // A fault may carry the reading that was not a number.
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
        // The text goes to a file or a pipe, never into a page.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter() },
    };

    /// <summary>Writes a published shape.</summary>
    public static string Of<T>(T shape) => JsonSerializer.Serialize(shape, Options);
}
