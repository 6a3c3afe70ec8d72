using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using System.Text.RegularExpressions;
using Xunit;

namespace StarterCtl.House;

/// <summary>What a library of the board may be written with: the little that the board's runtime has.</summary>
public sealed class BoardSourceTests
{
    private const BindingFlags Everything =
        BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly Type[] AllowedTypes = [typeof(void), typeof(bool), typeof(int), typeof(float), typeof(char), typeof(float[]), typeof(object), typeof(string), typeof(byte), typeof(byte[]), typeof(int[])];

    private static readonly Assembly Library = Assembly.Load(Tested.Library);

    private static readonly Type[] Types = Library.GetTypes().Where(type => type.Namespace == Tested.Library).ToArray();

    [Theory]
    [InlineData("double|decimal|Double|Decimal|long|ulong")]
    [InlineData("throw|try|catch|finally|Exception")]
    [InlineData("Linq|Collections|List|Func|Action|Nullable")]
    [InlineData("DateTime|TimeSpan|Stopwatch|Environment|Console|Thread|Task|Random|File")]
    [InlineData("Math|MathF|Convert|ToString|record|struct|async|await|yield|dynamic|lock|unsafe|delegate")]
    public void Sources_DoNotUse(string words) => Assert.Empty(Found($@"\b({words})\b"));

    [Fact]
    public void Sources_HaveNoGenerics() => Assert.Empty(Found(@"\w<[\w\[\], ]*>"));

    [Fact]
    public void Sources_AreFound() => Assert.InRange(Repository.Sources(Tested.Folder).Count, Types.Length, 150);

    [Fact]
    public void PublicTypes_AreSealedClassesSeamsOrEnumsOfItsOwnNamespace()
    {
        foreach (Type type in Library.GetExportedTypes())
        {
            Assert.Equal(Tested.Library, type.Namespace);
            Assert.False(type.IsGenericType, type.Name);
            Assert.True(type.IsEnum || type.IsInterface || (type.IsClass && type.IsSealed && type.BaseType == typeof(object)), type.Name);
        }
    }

    [Fact]
    public void EveryMember_IsMadeOfTheAllowedTypes()
    {
        List<string> wrong = [];
        foreach (Type type in Types)
        {
            foreach (FieldInfo field in type.GetFields(Everything)) Check(wrong, type, field.Name, field.FieldType);
            foreach (MethodBase method in type.GetMethods(Everything).Cast<MethodBase>().Concat(type.GetConstructors(Everything)))
            {
                if (method.IsGenericMethod) wrong.Add($"{type.Name}.{method.Name} is generic");
                if (method is MethodInfo info) Check(wrong, type, method.Name, info.ReturnType);
                foreach (ParameterInfo parameter in method.GetParameters()) Check(wrong, type, method.Name, parameter.ParameterType);
                foreach (LocalVariableInfo local in method.GetMethodBody()?.LocalVariables ?? []) Check(wrong, type, method.Name, local.LocalType);
            }
        }

        Assert.Empty(wrong);
    }

    [Fact]
    public void PerTickData_HoldNoStateBehindTheCallersBack()
    {
        // A table is a constant that the language cannot spell as one.
        foreach (Type type in Types.Where(type => type.IsClass && !type.Name.EndsWith("Table", StringComparison.Ordinal)))
        {
            Assert.DoesNotContain(type.GetFields(Everything), field => field.IsStatic && !field.IsLiteral);
        }
    }

    private static List<string> Found(string pattern) =>
        Repository.Sources(Tested.Folder)
            .SelectMany(path => Regex.Matches(Repository.Code(path), pattern).Select(match => $"{path}: {match.Value}"))
            .ToList();

    private static void Check(List<string> wrong, Type type, string member, Type used)
    {
        Type element = used.IsArray ? used.GetElementType()! : used;
        bool isOurs = element.Namespace == Tested.Library || element.Namespace == "StarterCtl.Core";
        if (!AllowedTypes.Contains(used) && !isOurs) wrong.Add($"{type.Name}.{member} uses {used.Name}");
    }
}
