using System.Collections.Generic;
using System.Linq;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace StarterCtl.Mutation;

/// <summary>What an expression can be changed into, one change at a time.</summary>
internal static class Operators
{
    private static readonly Dictionary<SyntaxKind, string[]> Binary = new()
    {
        [SyntaxKind.LessThanExpression] = ["<=", ">="],
        [SyntaxKind.LessThanOrEqualExpression] = ["<", ">"],
        [SyntaxKind.GreaterThanExpression] = [">=", "<="],
        [SyntaxKind.GreaterThanOrEqualExpression] = [">", "<"],
        [SyntaxKind.EqualsExpression] = ["!="],
        [SyntaxKind.NotEqualsExpression] = ["=="],
        [SyntaxKind.LogicalAndExpression] = ["||"],
        [SyntaxKind.LogicalOrExpression] = ["&&"],
        [SyntaxKind.AddExpression] = ["-"],
        [SyntaxKind.SubtractExpression] = ["+"],
        [SyntaxKind.MultiplyExpression] = ["/"],
        [SyntaxKind.DivideExpression] = ["*"],
        [SyntaxKind.ModuloExpression] = ["*"],
        [SyntaxKind.BitwiseAndExpression] = ["|"],
        [SyntaxKind.BitwiseOrExpression] = ["&"],
        [SyntaxKind.ExclusiveOrExpression] = ["|"],
        [SyntaxKind.LeftShiftExpression] = [">>"],
        [SyntaxKind.RightShiftExpression] = ["<<"],
        [SyntaxKind.UnsignedRightShiftExpression] = ["<<"],
        [SyntaxKind.AddAssignmentExpression] = ["-="],
        [SyntaxKind.SubtractAssignmentExpression] = ["+="],
        [SyntaxKind.MultiplyAssignmentExpression] = ["/="],
        [SyntaxKind.DivideAssignmentExpression] = ["*="],
        [SyntaxKind.ModuloAssignmentExpression] = ["*="],
        [SyntaxKind.AndAssignmentExpression] = ["|="],
        [SyntaxKind.OrAssignmentExpression] = ["&="],
        [SyntaxKind.ExclusiveOrAssignmentExpression] = ["|="],
        [SyntaxKind.LeftShiftAssignmentExpression] = [">>="],
        [SyntaxKind.RightShiftAssignmentExpression] = ["<<="],
    };

    /// <summary>Source text of every change to an expression of the original sources.</summary>
    internal static IEnumerable<string> Of(ExpressionSyntax node, SemanticModel model)
    {
        if (IsWrittenTo(node) || node.Parent is MemberAccessExpressionSyntax { Name: var name } && name == node) return [];
        return node switch
        {
            BinaryExpressionSyntax two => Two(two, two.Left, two.OperatorToken, two.Right, model).Concat(Negated(two, model)),
            AssignmentExpressionSyntax two => Two(two, two.Left, two.OperatorToken, two.Right, model),
            PrefixUnaryExpressionSyntax one => One(one),
            PostfixUnaryExpressionSyntax one => Step(one, one.Operand),
            LiteralExpressionSyntax literal => Literal(literal, model),
            ParenthesizedExpressionSyntax or CastExpressionSyntax => [],
            _ => Constant(node, model) ?? Negated(node, model),
        };
    }

    private static IEnumerable<string> Two(
        ExpressionSyntax node, ExpressionSyntax left, SyntaxToken sign, ExpressionSyntax right, SemanticModel model)
    {
        if (!Binary.TryGetValue(node.Kind(), out string[]? signs) || TypeOf(node, model) == SpecialType.System_String) return [];
        return signs.Select(other => $"{left.ToString()} {other} {right.ToString()}");
    }

    private static IEnumerable<string> One(PrefixUnaryExpressionSyntax node) => node.Kind() switch
    {
        SyntaxKind.UnaryMinusExpression or SyntaxKind.LogicalNotExpression or SyntaxKind.BitwiseNotExpression => [node.Operand.ToString()],
        SyntaxKind.PreIncrementExpression or SyntaxKind.PreDecrementExpression => Step(node, node.Operand),
        _ => [],
    };

    private static IEnumerable<string> Step(ExpressionSyntax node, ExpressionSyntax operand) => node.Kind() switch
    {
        SyntaxKind.PostIncrementExpression => [operand + "--"],
        SyntaxKind.PostDecrementExpression => [operand + "++"],
        SyntaxKind.PreIncrementExpression => ["--" + operand],
        SyntaxKind.PreDecrementExpression => ["++" + operand],
        _ => [],
    };

    private static IEnumerable<string> Literal(LiteralExpressionSyntax node, SemanticModel model) => node.Kind() switch
    {
        SyntaxKind.TrueLiteralExpression => ["false"],
        SyntaxKind.FalseLiteralExpression => ["true"],
        SyntaxKind.NumericLiteralExpression => [OneMore(node, model)],
        _ => [],
    };

    // The use of a named constant. The names of an enumeration are not numbers to be off by one.
    private static IEnumerable<string>? Constant(ExpressionSyntax node, SemanticModel model)
    {
        if (node is not (IdentifierNameSyntax or MemberAccessExpressionSyntax)) return null;
        if (model.GetSymbolInfo(node).Symbol is not IFieldSymbol { IsConst: true } field || field.ContainingType.TypeKind == TypeKind.Enum) return null;
        return field.Type.SpecialType is >= SpecialType.System_SByte and <= SpecialType.System_Double ? [OneMore(node, model)] : null;
    }

    private static string OneMore(ExpressionSyntax node, SemanticModel model)
    {
        string more = node is LiteralExpressionSyntax { Token.Value: int value and < int.MaxValue } ? $"{value + 1}" : $"{node.ToString()} + 1";
        return HiddenCast(node, model) is { } type ? $"({type})({more})" : more;
    }

    /// <summary>The type that a constant is turned into where it stands, if it is not its own.</summary>
    internal static string? HiddenCast(ExpressionSyntax node, SemanticModel model)
    {
        if (node is not (LiteralExpressionSyntax or IdentifierNameSyntax or MemberAccessExpressionSyntax)) return null;
        TypeInfo type = model.GetTypeInfo(node);
        return type.ConvertedType is { } target && !SymbolEqualityComparer.Default.Equals(type.Type, target)
            && model.GetConstantValue(node).HasValue && target.IsValueType ? target.ToDisplayString() : null;
    }

    // Whatever is true or false and no comparison, which has its opposite already, and no operand of a negation.
    private static IEnumerable<string> Negated(ExpressionSyntax node, SemanticModel model)
    {
        if (TypeOf(node, model) != SpecialType.System_Boolean) return [];
        SyntaxNode outer = node;
        while (outer.Parent is ParenthesizedExpressionSyntax) outer = outer.Parent;
        if (outer.Parent is PrefixUnaryExpressionSyntax or ExpressionStatementSyntax) return [];
        bool isJoint = node.IsKind(SyntaxKind.LogicalAndExpression) || node.IsKind(SyntaxKind.LogicalOrExpression);
        if (node is BinaryExpressionSyntax && !isJoint) return [];
        // A part of a longer chain is negated in its parts.
        if (isJoint && outer.Parent is BinaryExpressionSyntax) return [];
        return [isJoint ? $"!({node.ToString()})" : $"!{node.ToString()}"];
    }

    private static bool IsWrittenTo(ExpressionSyntax node) => node.Parent switch
    {
        AssignmentExpressionSyntax assignment => assignment.Left == node,
        ArgumentSyntax argument => !argument.RefKindKeyword.IsKind(SyntaxKind.None),
        PostfixUnaryExpressionSyntax => true,
        PrefixUnaryExpressionSyntax step => step.IsKind(SyntaxKind.PreIncrementExpression) || step.IsKind(SyntaxKind.PreDecrementExpression),
        _ => false,
    };

    private static SpecialType TypeOf(ExpressionSyntax node, SemanticModel model) => model.GetTypeInfo(node).Type?.SpecialType ?? SpecialType.None;
}
