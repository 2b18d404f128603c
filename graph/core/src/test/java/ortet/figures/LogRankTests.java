package ortet.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Outside values: {@code oracles/survival.csv} (R 4.2.2 {@code survdiff}, computed a second time). */
class LogRankTests {
    private static final double TO_R = 1e-9;

    private static Stream<NamedCsvRecord> rows() {
        return Oracle.rows("survival.csv", "analysis", "logrank");
    }

    private static LogRank test(String data) {
        Map<String, List<Followed>> groups = new LinkedHashMap<>();
        for (String group : data.equals("aml") ? List.of("Maintained", "Nonmaintained") : List.of("female", "male")) {
            groups.put(group, Followings.caseOf(data, group));
        }
        return LogRank.of(groups);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void agreesWithR(NamedCsvRecord row) {
        LogRank test = test(row.getField("data"));
        ChiSquare chi = test.test().orElseThrow();
        double found = switch (row.getField("quantity")) {
            case "chisq" -> chi.statistic();
            case "df" -> chi.degrees();
            case "p" -> chi.p();
            case "observed" -> test.groups().get(row.getField("group")).observed();
            case "expected" -> test.groups().get(row.getField("group")).expected();
            default -> throw new AssertionError(row);
        };
        Oracle.assertRelative(Oracle.number(row, "value"), found, TO_R, row.toString());
    }

    @Test
    void doesNotHeedTheOrderOfThreeGroups() {
        List<Followed> a = Followings.caseOf("aml", "Maintained");
        List<Followed> b = Followings.caseOf("aml", "Nonmaintained");
        List<Followed> c = List.of(Followed.happened(3), Followed.happened(20), Followed.censored(40));
        Map<String, List<Followed>> one = new LinkedHashMap<>();
        one.put("a", a);
        one.put("b", b);
        one.put("c", c);
        Map<String, List<Followed>> other = new LinkedHashMap<>();
        other.put("c", c);
        other.put("a", a);
        other.put("b", b);
        ChiSquare chi = LogRank.of(one).test().orElseThrow();
        assertEquals(2, chi.degrees());
        assertEquals(chi.statistic(), LogRank.of(other).test().orElseThrow().statistic(), 1e-12);
    }

    @Test
    void isAbsentAndNamesGroupsThatSayNothing() {
        assertTrue(LogRank.of(Map.of()).test().isEmpty());
        Map<String, List<Followed>> groups = new LinkedHashMap<>();
        groups.put("a", List.of(Followed.happened(5), Followed.happened(9)));
        groups.put("gone before", List.of(Followed.censored(1)));
        groups.put("nobody", List.of());
        LogRank test = LogRank.of(groups);
        assertTrue(test.test().isEmpty());
        assertTrue(test.silent().contains("gone before") && test.silent().contains("nobody"));
        groups.put("b", List.of(Followed.happened(6), Followed.censored(9)));
        assertEquals(1, LogRank.of(groups).test().orElseThrow().degrees());
        assertEquals(List.of("gone before", "nobody"), LogRank.of(groups).silent());
        assertTrue(LogRank.of(Map.of("a", List.of(Followed.censored(3)), "b", List.of(Followed.censored(4))))
                .test()
                .isEmpty());
    }

    @Test
    void sharesOutWhatHappenedAmongTheGroups() {
        LogRank test = test("aml");
        double observed = test.groups().values().stream()
                .mapToDouble(LogRank.Group::observed)
                .sum();
        double expected = test.groups().values().stream()
                .mapToDouble(LogRank.Group::expected)
                .sum();
        assertEquals(observed, expected, 1e-12);
    }
}
