package ortet.book.mapping;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ortet.value.Decimal;
import ortet.value.Refused;

/**
 * Reads numbers as a nursery writes them, with a decimal point or a decimal comma and marks between thousands.
 *
 * <p>With a decimal point, {@code 1,250.5} is 1250.5 and {@code 12,5} is refused; with a decimal comma, {@code 1.250,5}
 * is 1250.5 and {@code 12.5} is refused. Blanks and apostrophes may part thousands in both.
 */
final class Numbers {
    private static final int PRECISE = 6;
    private static final String BLANKS = "[ \\u00A0\\u2007\\u2009\\u202F'’]";
    private static final Pattern POINTED = Pattern.compile("[+-]?\\d*\\.\\d+");
    private static final Pattern WITH_COMMA = Pattern.compile("[+-]?\\d*,\\d+");
    private static final Pattern CODED = Pattern.compile("(?:([A-Za-z]{3})\\s*)?(.*?)(?:\\s*([A-Za-z]{3}))?");
    private static final Pattern WITH_UNIT =
            Pattern.compile("([+-]?[0-9.,\\u00A0\\u2007\\u2009\\u202F '’]*[0-9.,])\\s*([^0-9.,\\s].*)?");

    /** What a number measures, with the units that it may be written in and what they are in the book's own. */
    enum Measure {
        /** A bare number. */
        NONE(Map.of()),
        /** Millimetres. */
        LENGTH(Map.of(
                "mm",
                one(),
                "cm",
                of("10"),
                "m",
                of("1000"),
                "in",
                of("25.4"),
                "inch",
                of("25.4"),
                "inches",
                of("25.4"),
                "\"",
                of("25.4"),
                "ft",
                of("304.8"))),
        /** Grams. */
        WEIGHT(Map.of("g", one(), "kg", of("1000"), "oz", of("28.349523"))),
        /** Degrees Celsius. */
        HEAT(Map.of("c", one(), "°c", one(), "° c", one())),
        /** Square metres. */
        AREA(Map.of("m2", one(), "m²", one(), "sqm", one())),
        /** Years. */
        AGE(Map.of("year", one(), "years", one(), "yr", one(), "yrs", one(), "y", one()));

        private final Map<String, BigDecimal> units;

        Measure(Map<String, BigDecimal> units) {
            this.units = units;
        }

        private static BigDecimal one() {
            return BigDecimal.ONE;
        }

        private static BigDecimal of(String factor) {
            return new BigDecimal(factor);
        }

        /** Return the units, by the alphabet. */
        List<String> units() {
            return units.keySet().stream().sorted().toList();
        }

        /** Return by what a number in this unit is multiplied. */
        Optional<BigDecimal> factor(String unit) {
            return Optional.ofNullable(units.get(unit.strip().toLowerCase(Locale.ROOT)));
        }
    }

    private static final Map<String, String> SIGNS = Map.of("€", "EUR", "£", "GBP", "¥", "JPY");

    private final boolean decimalComma;
    private final Pattern whole;

    Numbers(boolean decimalComma) {
        this.decimalComma = decimalComma;
        String grouping = decimalComma ? "\\." : ",";
        String decimal = decimalComma ? "," : "\\.";
        String group = "(?:" + grouping + "|" + BLANKS + ")";
        whole = Pattern.compile(
                "[+-]?(?:(?:\\d{1,3}(?:" + group + "\\d{3})+|\\d+)(?:" + decimal + "\\d*)?|" + decimal + "\\d+)");
    }

    /** Tell whether a comma stands before the decimals. */
    boolean isDecimalComma() {
        return decimalComma;
    }

    /**
     * Read a number.
     *
     * @throws Refused when the text is none
     */
    Decimal parse(String text) {
        return Decimal.of(value(text.strip()));
    }

    private BigDecimal value(String bare) {
        if (!whole.matcher(bare).matches()) {
            throw Refused.because(
                    "bad-number",
                    "expected a number such as " + (decimalComma ? "12 or 12,5" : "12 or 12.5") + ", found \"" + bare
                            + "\"" + otherMark(bare));
        }
        String digits = bare.replaceAll(BLANKS, "");
        digits = decimalComma ? digits.replace(".", "").replace(',', '.') : digits.replace(",", "");
        return new BigDecimal(digits.endsWith(".") ? digits.substring(0, digits.length() - 1) : digits);
    }

    private String otherMark(String bare) {
        if (!(decimalComma ? POINTED : WITH_COMMA).matcher(bare).matches()) {
            return "";
        }
        return "; where the numbers have a decimal " + (decimalComma ? "point" : "comma")
                + ", the mapping says numbers = " + (decimalComma ? "decimal point" : "decimal comma");
    }

    /**
     * Read a number with or without its unit, in the book's own unit.
     *
     * @param unit the unit of a number that stands alone
     * @throws Refused when the text is none
     */
    Decimal parse(String text, Measure measure, Optional<String> unit) {
        Matcher matcher = WITH_UNIT.matcher(text.strip());
        if (!matcher.matches()) {
            return parse(text);
        }
        BigDecimal number = value(matcher.group(1));
        Optional<String> written = Optional.ofNullable(matcher.group(2));
        if (written.isEmpty() && unit.isEmpty()) {
            return Decimal.of(number);
        }
        String in = written.or(() -> unit).orElseThrow();
        BigDecimal factor = measure.factor(in)
                .orElseThrow(() -> Refused.because(
                        "bad-number", "expected a number" + among(measure) + ", found \"" + text.strip() + "\""));
        BigDecimal value = number.multiply(factor);
        boolean isExact = factor.compareTo(BigDecimal.ONE) == 0
                || value.stripTrailingZeros().scale() <= PRECISE;
        return Decimal.of(isExact ? value : value.setScale(PRECISE, RoundingMode.HALF_EVEN));
    }

    private static String among(Measure measure) {
        return measure == Measure.NONE ? "" : ", alone or in " + String.join(", ", measure.units());
    }

    /**
     * Read a whole number.
     *
     * @throws Refused when the text is none
     */
    String count(String text) {
        Decimal number = parse(text);
        if (number.signum() < 0 || number.value().scale() > 0) {
            throw Refused.because("bad-number", "expected a whole number, found \"" + text.strip() + "\"");
        }
        return number.toString();
    }

    /**
     * Read an amount of money, and write it as the book does.
     *
     * @param currency the currency where the text names none
     * @throws Refused when the text is none
     */
    String money(String text, Optional<String> currency) {
        return money(text, currency, false);
    }

    /**
     * Read an amount that need not be whole in the currency's minor unit, and write it as the book does.
     *
     * @param currency the currency where the text names none
     * @throws Refused when the text is none
     */
    String amount(String text, Optional<String> currency) {
        return money(text, currency, true);
    }

    private String money(String text, Optional<String> currency, boolean fine) {
        String bare = text.strip();
        Optional<String> named = Optional.empty();
        for (Map.Entry<String, String> sign : SIGNS.entrySet()) {
            if (bare.startsWith(sign.getKey())) {
                named = Optional.of(sign.getValue());
                bare = bare.substring(1).strip();
            } else if (bare.endsWith(sign.getKey())) {
                named = Optional.of(sign.getValue());
                bare = bare.substring(0, bare.length() - 1).strip();
            }
        }
        Matcher code = CODED.matcher(bare);
        if (named.isEmpty()
                && code.matches()
                && code.group(2).chars().anyMatch(Character::isDigit)
                && (code.group(1) != null ^ code.group(3) != null)) {
            named = Optional.of(code.group(1) != null ? code.group(1) : code.group(3));
            bare = code.group(2);
        }
        String in = named.or(() -> currency)
                .orElseThrow(() -> Refused.because(
                        "bad-money",
                        "expected an amount with its currency, such as 24.50 EUR, found \"" + text.strip()
                                + "\"; the mapping can say the currency: = price in EUR"));
        BigDecimal amount = value(bare).stripTrailingZeros();
        int minor = digits(in);
        int digits = fine ? PRECISE : minor;
        if (amount.signum() < 0 || amount.scale() > digits) {
            throw Refused.because(
                    "bad-money",
                    "expected an amount of at least 0 with at most " + digits + " decimals, found \"" + text.strip()
                            + "\"");
        }
        return (fine ? amount.setScale(Math.max(0, amount.scale())) : amount.setScale(minor)).toPlainString() + " "
                + in.toUpperCase(Locale.ROOT);
    }

    /** Return how many decimals a currency has; refuse one that ISO 4217 does not know. */
    static int digits(String currency) {
        try {
            return Math.max(
                    0, Currency.getInstance(currency.toUpperCase(Locale.ROOT)).getDefaultFractionDigits());
        } catch (IllegalArgumentException unknown) {
            throw Refused.because(
                    "bad-money", "no currency \"" + currency + "\"; expected a code of ISO 4217 such as EUR");
        }
    }
}
