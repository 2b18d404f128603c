package ortet.commands;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import ortet.figures.ChiSquare;
import ortet.figures.Count;
import ortet.figures.Interval;
import ortet.figures.Ratio;
import ortet.screen.Column;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;

/**
 * One figure a row, each with how many stand behind it, its interval and its method; what is not known is a dash for people
 * and nothing for programs, and a limit that there is not is nothing as well.
 */
final class FigureSheet {
    private final Sheet.Builder sheet;
    private final Set<String> sources = new LinkedHashSet<>();
    private final List<String> notes = new ArrayList<>();

    FigureSheet(String title, long percent) {
        this.sheet = Sheet.titled(
                title,
                Column.text("figure_shown", "figure").forPeople(),
                Column.text("of_shown", "of").forPeople(),
                Column.text("figure", "figure").forPrograms(),
                Column.text("of", "of").forPrograms(),
                Column.text("known", "out of").forPeople(),
                Column.whole("happened", "happened").forPrograms(),
                Column.whole("trials", "trials").forPrograms(),
                Column.whole("clusters", "clusters").forPrograms(),
                Column.text("value_shown", "value (" + percent + " %)").forPeople(),
                Column.number("value", "value", 4).forPrograms(),
                Column.text("value_is", "value is").forPrograms(),
                Column.number("lower", "lower", 4).forPrograms(),
                Column.number("upper", "upper", 4).forPrograms(),
                Column.number("statistic", "statistic", 4).forPrograms(),
                Column.whole("degrees", "degrees").forPrograms(),
                Column.text("p_shown", "p").forPeople(),
                Column.number("p", "p", 4).forPrograms(),
                Column.text("method", "method").forPrograms());
    }

    /** How a number is written for people, and the unit behind it. */
    enum Manner {
        /** A share, in percent. */
        PERCENT(" %") {
            @Override
            String write(double value) {
                return points(value);
            }
        },
        /** A difference of shares, in points of a hundred. */
        POINTS("") {
            @Override
            String write(double value) {
                return points(value);
            }
        },
        /** A ratio. */
        TIMES("") {
            @Override
            String write(double value) {
                return times(value);
            }
        },
        /** A time, in the unit of the file. */
        TIME("") {
            @Override
            String write(double value) {
                return plain(value);
            }
        };

        private final String unit;

        Manner(String unit) {
            this.unit = unit;
        }

        abstract String write(double value);
    }

    /** A row that is being filled. */
    final class Figure {
        private final String what;
        private final String of;
        private String shownWhat;
        private String shownOf;
        private Optional<String> known = Optional.empty();
        private Optional<Long> happened = Optional.empty();
        private Optional<Long> trials = Optional.empty();
        private Optional<Integer> clusters = Optional.empty();
        private String shown = "–";
        private Optional<Double> value = Optional.empty();
        private String is = "not-known";
        private Optional<Double> lower = Optional.empty();
        private Optional<Double> upper = Optional.empty();
        private Optional<ChiSquare> chi = Optional.empty();
        private Optional<Double> p = Optional.empty();
        private String method = "";

        private Figure(String what, String of) {
            this.what = what;
            this.of = of;
            this.shownWhat = what;
            this.shownOf = of;
        }

        /** Call the figure by a shorter name for people, below a heading that says of what it is. */
        Figure under(String shorter) {
            shownWhat = shorter;
            shownOf = "";
            return this;
        }

        Figure outOf(Count count, Optional<Integer> inClusters) {
            happened = Optional.of(count.successes());
            trials = Optional.of(count.trials());
            clusters = inClusters;
            known = Optional.of(count
                    + inClusters
                            .map(many -> " in " + Counts.of(many, "cluster", "clusters"))
                            .orElse(""));
            return this;
        }

        Figure value(Optional<Double> found, Optional<Interval> interval, Manner manner) {
            value = found;
            is = found.isPresent() ? "number" : "not-known";
            found.ifPresent(number -> shown = manner.write(number) + manner.unit + limits(interval, manner));
            if (found.isEmpty() && interval.isPresent()) {
                shown = "–" + limits(interval, manner);
            }
            return this;
        }

        Figure ratio(Ratio ratio, Optional<Interval> interval) {
            ratio.accept(new Ratio.Visitor<Void>() {
                @Override
                public Void finite(double number) {
                    value(Optional.of(number), interval, Manner.TIMES);
                    return null;
                }

                @Override
                public Void infinite() {
                    is = "infinite";
                    shown = "infinite" + limits(interval, Manner.TIMES);
                    return null;
                }

                @Override
                public Void undefined() {
                    is = "not-defined";
                    limits(interval, Manner.TIMES);
                    return null;
                }
            });
            return this;
        }

        private String limits(Optional<Interval> interval, Manner manner) {
            if (interval.isEmpty()) {
                return "";
            }
            Interval limits = interval.get();
            lower = finite(limits.lower());
            upper = finite(limits.upper());
            method(limits.method().title());
            sources.add(limits.method().title() + ": " + limits.method().source());
            return " ("
                    + (limits.isBounded()
                            ? manner.write(limits.lower()) + " to " + manner.write(limits.upper())
                            : manner.write(limits.lower()) + " or more")
                    + ")";
        }

        private static Optional<Double> finite(double limit) {
            return Double.isFinite(limit) ? Optional.of(limit) : Optional.empty();
        }

        /** Say of a range what it is, where there is no one value. */
        Figure between(double low, double high) {
            String range = plain(low) + (Double.isFinite(high) ? "–" + plain(high) : " or later");
            shown = range + (shown.startsWith("–") ? shown.substring(1) : "");
            is = "between " + low + (Double.isFinite(high) ? " and " + high : " and later");
            return this;
        }

        Figure out(String text) {
            known = Optional.of(text);
            return this;
        }

        Figure p(double found) {
            p = Optional.of(found);
            return this;
        }

        Figure p(double found, String title, String source) {
            p = Optional.of(found);
            sources.add("p: " + title + ": " + source);
            return this;
        }

        Figure test(Optional<ChiSquare> found) {
            chi = found;
            p = found.map(ChiSquare::p);
            found.ifPresent(one -> {
                value = Optional.of(one.statistic());
                is = "number";
                shown = "χ² " + String.format(Locale.ROOT, "%.2f", one.statistic()) + " on " + one.degrees();
            });
            return this;
        }

        Figure by(String title, String source) {
            method(title);
            sources.add(title + ": " + source);
            return this;
        }

        private void method(String title) {
            method = method.isEmpty() ? title : method + "; " + title;
        }

        void add() {
            sheet.row(
                    shownWhat,
                    shownOf,
                    what,
                    of,
                    known,
                    happened,
                    trials,
                    clusters,
                    shown,
                    value,
                    is,
                    lower,
                    upper,
                    chi.map(ChiSquare::statistic),
                    chi.map(ChiSquare::degrees),
                    p.map(FigureSheet::probability).orElse(""),
                    p,
                    method);
        }
    }

    /** Begin a row. */
    Figure figure(String what, String of) {
        return new Figure(what, of);
    }

    FigureSheet section(String heading) {
        sheet.section(heading);
        return this;
    }

    FigureSheet note(String note) {
        notes.add(note);
        return this;
    }

    FigureSheet warning(String warning) {
        sheet.warning(warning);
        return this;
    }

    /** Show the sheet; with what stands behind each method, if asked for. */
    void show(boolean explain, List<String> inputs, OutputFormat format, Screen screen) {
        notes.forEach(sheet::note);
        if (explain) {
            sources.forEach(source -> sheet.note("method: " + source));
            inputs.forEach(input -> sheet.note("input: " + input));
        }
        screen.show(sheet.build(), format);
    }

    /** Write a share in percent, 0 and 100 only when it is so exactly. */
    static String percent(double share) {
        return points(share) + " %";
    }

    /** Write a difference of shares in points of a hundred. */
    static String points(double share) {
        String text = String.format(Locale.ROOT, "%.1f", 100 * share);
        if (share == 0 || share == 1 || share == -1) {
            return Long.toString(Math.round(100 * share));
        }
        if (text.equals("0.0") || text.equals("-0.0")) {
            return share > 0 ? "<0.1" : ">-0.1";
        }
        return text.equals("100.0") ? ">99.9" : text;
    }

    /** Write a ratio with three digits. */
    static String times(double ratio) {
        if (ratio == 0) {
            return "0";
        }
        if (ratio >= 1e6 || ratio < 1e-4) {
            return String.format(Locale.ROOT, "%.2e", ratio);
        }
        int decimals = (int) Math.max(0, 2 - Math.floor(Math.log10(ratio)));
        return String.format(Locale.ROOT, "%." + decimals + "f", ratio);
    }

    /** Write a time, whole where it is whole. */
    static String plain(double time) {
        return time == Math.rint(time) && Math.abs(time) < 1e15
                ? Long.toString((long) time)
                : String.format(Locale.ROOT, "%.1f", time);
    }

    static String probability(double p) {
        return p < 0.001 ? "<0.001" : String.format(Locale.ROOT, "%.3f", p);
    }
}
