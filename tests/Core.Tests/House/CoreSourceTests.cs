using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using System.Text.RegularExpressions;
using StarterCtl.House;
using Xunit;

namespace StarterCtl.Core.Tests.House;

/// <summary>What the core may be written with: the little that the board's runtime has.</summary>
public sealed class CoreSourceTests
{
    private const BindingFlags Everything =
        BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly Type[] AllowedTypes = [typeof(void), typeof(bool), typeof(int), typeof(float), typeof(float[]), typeof(object), typeof(string), typeof(byte), typeof(byte[]), typeof(int[]), typeof(SettingId[]), typeof(SettingProblem[]), typeof(SettingRow[]), typeof(FaultRow[])];

    private static readonly Type[] CoreTypes = typeof(Controller).Assembly.GetTypes().Where(type => type.Namespace == "StarterCtl.Core").ToArray();

    [Theory]
    [InlineData("double|decimal|Double|Decimal|long|ulong")]
    [InlineData("throw|try|catch|finally|Exception")]
    [InlineData("using|Linq|Collections|List|Func|Action|Nullable")]
    [InlineData("DateTime|TimeSpan|Stopwatch|Environment|Console|Thread|Task|Random|File")]
    [InlineData("Math|MathF|Convert|ToString|record|struct|async|await|yield|dynamic|lock|unsafe|delegate")]
    public void Core_Sources_DoNotUse(string words)
    {
        Assert.Empty(Found($@"\b({words})\b"));
    }

    [Fact]
    public void Core_Sources_HaveNoGenerics() => Assert.Empty(Found(@"\w<[\w\[\], ]*>"));

    [Fact]
    public void Core_Sources_AreFound() => Assert.InRange(Repository.Files("core", "*.cs").Count, CoreTypes.Length, 150);

    [Fact]
    public void Core_References_NothingButTheRuntime() =>
        Assert.Equal(["System.Runtime"], typeof(Controller).Assembly.GetReferencedAssemblies().Select(reference => reference.Name));

    [Fact]
    public void Core_PublicTypes_AreSealedClassesOrEnumsOfItsOwnNamespace()
    {
        foreach (Type type in typeof(Controller).Assembly.GetExportedTypes())
        {
            Assert.Equal("StarterCtl.Core", type.Namespace);
            Assert.False(type.IsGenericType, type.Name);
            Assert.True(type.IsEnum || (type.IsClass && type.IsSealed && type.BaseType == typeof(object)), type.Name);
        }
    }

    [Fact]
    public void Core_EveryMember_IsMadeOfTheAllowedTypes()
    {
        List<string> wrong = [];
        foreach (Type type in CoreTypes)
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
    public void Core_Texts_StandInTheTablesOnly()
    {
        IEnumerable<string> files = Repository.Files("core", "*.cs").Where(path => Regex.IsMatch(Repository.Code(path), @"\bstring\b"));

        Assert.All(files, path => Assert.Matches("(Row|Table)\\.cs$", path));
    }

    [Fact]
    public void Core_PerTickData_HoldNoStateBehindTheCallersBack()
    {
        // A table is a constant that the language cannot spell as one.
        foreach (Type type in CoreTypes.Where(type => type.IsClass && !type.Name.EndsWith("Table", StringComparison.Ordinal)))
        {
            Assert.DoesNotContain(type.GetFields(Everything), field => field.IsStatic && !field.IsLiteral);
        }
    }

    private static List<string> Found(string pattern) =>
        Repository.Files("core", "*.cs")
            .SelectMany(path => Regex.Matches(Repository.Code(path), pattern).Select(match => $"{path}: {match.Value}"))
            .ToList();

    private static void Check(List<string> wrong, Type type, string member, Type used)
    {
        if (!AllowedTypes.Contains(used) && !CoreTypes.Contains(used)) wrong.Add($"{type.Name}.{member} uses {used.Name}");
    }
}
