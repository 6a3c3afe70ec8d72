namespace StarterCtl.App.Reporting;

/// <summary>The style sheet, kept inside the page.</summary>
internal static class ReportStyle
{
    /// <summary>The rules.</summary>
    public const string Css = """
        :root { --ink: #111; --rule: #777; --pale: #f3f3ef; --go: #0a6b2d; --stop: #a01818; --warn: #7a5200; }
        * { box-sizing: border-box; }
        html { -webkit-text-size-adjust: 100%; }
        body { margin: 0; background: #fff; color: var(--ink); font: 1rem/1.5 system-ui, "Segoe UI", Roboto, "Noto Sans", Arial, sans-serif; }
        main { max-width: 62rem; margin: 0 auto; padding: 1rem 1rem 3rem; }
        header { border-bottom: 3px solid var(--ink); margin-bottom: 1rem; }
        h1 { font-size: 1.7rem; line-height: 1.2; margin: .5rem 0 .25rem; overflow-wrap: anywhere; }
        h2 { font-size: 1.3rem; line-height: 1.25; margin: 2.2rem 0 .6rem; border-bottom: 1px solid var(--rule); padding-bottom: .2rem; }
        h3 { font-size: 1.05rem; margin: 1.4rem 0 .4rem; }
        p { margin: .5rem 0; max-width: 46rem; }
        ul { padding-left: 1.3rem; max-width: 46rem; }
        li { margin: .3rem 0; }
        a { color: #063f7d; }
        nav ol { columns: 2; padding-left: 1.5rem; margin: .5rem 0; max-width: 46rem; }
        .what { margin: 0 0 .75rem; overflow-wrap: anywhere; }
        .note { font-size: .9rem; }
        code { font-family: ui-monospace, "DejaVu Sans Mono", Consolas, monospace; font-size: .92em; overflow-wrap: anywhere; }
        .verdict { border: 2px solid var(--ink); border-left-width: 10px; padding: .6rem .9rem; margin: 1rem 0; }
        .verdict .word { font-size: 1.25rem; font-weight: 700; margin: 0; }
        .pass { border-color: var(--go); }
        .pass .word { color: var(--go); }
        .fail { border-color: var(--stop); }
        .fail .word { color: var(--stop); }
        .warning { border: 1px solid var(--warn); border-left-width: 8px; padding: .4rem .9rem; margin: 1rem 0; }
        .keys { display: grid; grid-template-columns: repeat(auto-fill, minmax(10.5rem, 1fr)); gap: .6rem; margin: 1rem 0; padding: 0; }
        .keys div { border: 1px solid var(--rule); padding: .4rem .6rem; }
        .keys dt { font-size: .85rem; }
        .keys dd { margin: 0; font-size: 1.15rem; font-weight: 600; }
        .scroll {
          overflow-x: auto; margin: .8rem 0 1.2rem;
          background: linear-gradient(90deg, #fff 40%, transparent) 0 0 / 2rem 100% no-repeat local,
            linear-gradient(270deg, #fff 40%, transparent) 100% 0 / 2rem 100% no-repeat local,
            linear-gradient(90deg, #bbb, transparent) 0 0 / .7rem 100% no-repeat scroll,
            linear-gradient(270deg, #bbb, transparent) 100% 0 / .7rem 100% no-repeat scroll;
        }
        table { border-collapse: collapse; font-size: .92rem; font-variant-numeric: tabular-nums; }
        caption { text-align: left; font-weight: 600; padding: .2rem 0; }
        th, td { border-bottom: 1px solid #bbb; padding: .25rem .6rem; text-align: right; vertical-align: top; }
        thead th { border-bottom: 2px solid var(--ink); vertical-align: bottom; }
        tbody th { font-weight: 400; }
        th:first-child, .words th, .words td { text-align: left; }
        .figures td { white-space: nowrap; }
        .tight { font-size: .88rem; }
        .tight th, .tight td { padding: .25rem .38rem; }
        .words tbody th { white-space: nowrap; }
        .wrap tbody th { white-space: normal; }
        .sums { border-left: 3px solid var(--rule); padding: .1rem 0 .1rem .9rem; margin: .6rem 0 1rem; overflow-x: auto; }
        .sums p { margin: .3rem 0; max-width: none; }
        var { font-style: italic; }
        sub { font-size: .75em; line-height: 0; }
        figure { margin: 1rem 0 1.6rem; }
        figcaption { font-size: .92rem; max-width: 46rem; margin-top: .3rem; }
        figure svg { display: block; width: 100%; height: auto; }
        svg text { font-family: system-ui, "Segoe UI", Roboto, "Noto Sans", Arial, sans-serif; }
        svg .word { fill: #000; stroke: #fff; stroke-width: 3px; stroke-linejoin: round; paint-order: stroke; }
        .narrow { display: none !important; }
        footer { border-top: 1px solid var(--rule); margin-top: 2rem; padding-top: .5rem; font-size: .9rem; }
        @media screen and (max-width: 600px) {
          main { padding: .5rem .7rem 2rem; }
          .narrow { display: block !important; }
          .wide { display: none !important; }
          nav ol { columns: 1; }
          h1 { font-size: 1.35rem; }
          .keys { grid-template-columns: 1fr 1fr; }
          .keys dd { font-size: 1.02rem; }
          table { font-size: .86rem; }
          th, td { padding: .2rem .45rem; }
          .figures td { white-space: normal; }
          .timeline thead { display: none; }
          .timeline tr { display: block; border-bottom: 1px solid #bbb; padding: .25rem 0; }
          .timeline th, .timeline td { display: inline-block; border: 0; padding: 0 .7rem 0 0; }
          .timeline th::after { content: " s"; }
          .timeline td:nth-child(3)::before { content: "stage "; }
          .timeline td:nth-child(4)::after { content: " A"; }
          .timeline td:last-child { display: block; }
        }
        @page { margin: 15mm 14mm 17mm; }
        @media print {
          html { font-size: 10pt; }
          body { line-height: 1.4; color: #000; }
          main { max-width: none; padding: 0; }
          nav { display: none; }
          h2 { margin-top: 1.4rem; }
          h2, h3, caption { break-after: avoid; }
          figure, .verdict, .warning, .sums p, tr, li, .short { break-inside: avoid; }
          .keys div { break-inside: avoid; }
          thead { display: table-header-group; }
          .scroll, .sums { overflow: visible; background: none; }
          table { font-size: .86rem; }
          a { color: inherit; text-decoration: none; }
          * { -webkit-print-color-adjust: exact; print-color-adjust: exact; }
        }
        """;
}
