using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using static Microsoft.CodeAnalysis.CSharp.SyntaxFactory;

namespace StarterCtl.Mutation;

/// <summary>
/// Rewrites a source so that it holds all of its mutants at once and each place asks which one is active. What is mutated
/// keeps its own parts as they were, as only one mutant is ever active: the text grows with the depth, not with its power.
/// </summary>
internal sealed partial class Schemata : CSharpSyntaxRewriter
{
    /// <summary>Mark of a rewritten place; its data is the mutant's number.</summary>
    internal const string Mark = "mutant";

    private const int LongestText = 110;

    // Only the parser makes the underscore a discard and no name.
    private static readonly ExpressionSyntax Discard = ((AssignmentExpressionSyntax)ParseExpression("_ = 0")).Left;

    private readonly string _file;
    private readonly SemanticModel _model;
    private readonly HashSet<int> _left;
    private readonly List<Mutant> _mutants;

    /// <summary>Prepares for one source.</summary>
    /// <param name="file">Its path below the root.</param>
    /// <param name="model">What its names mean.</param>
    /// <param name="left">Numbers of mutants to leave out.</param>
    /// <param name="mutants">Receives the mutants, those left out too; the number of the next is its length + 1.</param>
    internal Schemata(string file, SemanticModel model, HashSet<int> left, List<Mutant> mutants)
    {
        _file = file;
        _model = model;
        _left = left;
        _mutants = mutants;
    }

    /// <inheritdoc/>
    public override SyntaxNode? Visit(SyntaxNode? node)
    {
        if (node == null || MustStayConstant(node)) return node;
        return node switch
        {
            ExpressionSyntax expression => Choose(expression),
            ExpressionStatementSyntax or ReturnStatementSyntax { Expression: null } or ContinueStatementSyntax => Remove((StatementSyntax)node),
            BreakStatementSyntax { Parent: not SwitchSectionSyntax } => Remove((StatementSyntax)node),
            _ => base.Visit(node),
        };
    }

    /// <inheritdoc/>
    public override SyntaxNode? VisitForStatement(ForStatementSyntax node)
    {
        ForStatementSyntax visited = (ForStatementSyntax)base.VisitForStatement(node)!;
        return visited.WithIncrementors(SeparatedList(visited.Incrementors.Select(AsStatement)));
    }

    /// <inheritdoc/>
    public override SyntaxNode? VisitArrowExpressionClause(ArrowExpressionClauseSyntax node)
    {
        ArrowExpressionClauseSyntax visited = (ArrowExpressionClauseSyntax)base.VisitArrowExpressionClause(node)!;
        return IsStep(node.Expression) ? visited.WithExpression(AsStatement(visited.Expression)) : visited;
    }

    private static bool MustStayConstant(SyntaxNode node) => node switch
    {
        AttributeListSyntax or EnumMemberDeclarationSyntax or CaseSwitchLabelSyntax or PatternSyntax or ParameterSyntax or GotoStatementSyntax => true,
        FieldDeclarationSyntax field => field.Modifiers.Any(SyntaxKind.ConstKeyword),
        LocalDeclarationStatementSyntax local => local.IsConst,
        InvocationExpressionSyntax { Expression: IdentifierNameSyntax { Identifier.Text: "nameof" } } => true,
        TypeSyntax and not SimpleNameSyntax => true,
        _ => false,
    };

    private ExpressionSyntax Choose(ExpressionSyntax node)
    {
        List<(int Number, string Text)> changes = [.. Operators.Of(node, _model).Select(text => (Add(node, text), text))];
        string? cast = Operators.HiddenCast(node, _model);
        ExpressionSyntax chosen = (ExpressionSyntax)base.Visit(node)!;
        changes.RemoveAll(change => _left.Contains(change.Number));
        if (changes.Count == 0) return chosen;

        chosen = cast == null ? ParenthesizedExpression(chosen.WithoutTrivia()) : CastExpression(ParseTypeName(cast), ParenthesizedExpression(chosen.WithoutTrivia()));
        foreach ((int number, string text) in Enumerable.Reverse(changes))
        {
            chosen = Marked(ParenthesizedExpression(ConditionalExpression(Question(number), ParenthesizedExpression(ParseExpression(text)), chosen)), number);
        }

        return chosen.WithTriviaFrom(node);
    }

    private StatementSyntax Remove(StatementSyntax node)
    {
        int number = CanDoWithout(node) ? Add(node, "(removed)") : 0;
        StatementSyntax visited = (StatementSyntax)base.Visit(node)!;
        if (visited is ExpressionStatementSyntax { Expression: var expression } statement) visited = statement.WithExpression(AsStatement(expression));
        if (number == 0 || _left.Contains(number)) return visited;
        ExpressionSyntax isOther = PrefixUnaryExpression(SyntaxKind.LogicalNotExpression, Question(number));
        return Marked(Block(IfStatement(isOther, visited)), number);
    }

    // A local or an out parameter that gets its first value here cannot do without it.
    private bool CanDoWithout(StatementSyntax node)
    {
        if (node is not ExpressionStatementSyntax { Expression: AssignmentExpressionSyntax { Left: var left } }) return true;
        return _model.GetSymbolInfo(left).Symbol switch
        {
            ILocalSymbol local => local.DeclaringSyntaxReferences is [var place] && place.GetSyntax() is VariableDeclaratorSyntax { Initializer: not null },
            IParameterSymbol parameter => parameter.RefKind != RefKind.Out,
            _ => true,
        };
    }

    private static bool IsStep(ExpressionSyntax node) => node is AssignmentExpressionSyntax or PostfixUnaryExpressionSyntax
        || node.IsKind(SyntaxKind.PreIncrementExpression) || node.IsKind(SyntaxKind.PreDecrementExpression);

    private static ExpressionSyntax AsStatement(ExpressionSyntax node) => node is not ParenthesizedExpressionSyntax
        ? node
        : AssignmentExpression(SyntaxKind.SimpleAssignmentExpression, Discard, node);

    private static ExpressionSyntax Question(int number) => ParseExpression($"{MutantSwitch.Question}{number})");

    private static TNode Marked<TNode>(TNode node, int number)
        where TNode : SyntaxNode =>
        node.WithAdditionalAnnotations(new SyntaxAnnotation(Mark, $"{number}"));

    private int Add(SyntaxNode node, string mutated)
    {
        int number = _mutants.Count + 1;
        _mutants.Add(new Mutant(number, _file, node.GetLocation().GetLineSpan().StartLinePosition.Line + 1, OneLine(node.ToString()), OneLine(mutated)));
        return number;
    }

    private static string OneLine(string text)
    {
        string line = Spaces().Replace(text, " ");
        return line.Length <= LongestText ? line : string.Concat(line.AsSpan(0, LongestText), "...");
    }

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
