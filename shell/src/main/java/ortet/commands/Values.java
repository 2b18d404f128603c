package ortet.commands;

import java.time.LocalDate;
import java.util.function.Supplier;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.convert.converter.Converter;
import ortet.entry.Band;
import ortet.entry.Finding;
import ortet.entry.Share;
import ortet.line.TypedWords;
import ortet.plant.CultivarName;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.value.Amount;
import ortet.value.Decimal;
import ortet.value.Money;
import ortet.value.Strength;
import ortet.value.When;

/** Turns words of a line into the values of the trade. */
@Configuration(proxyBeanMethods = false)
public class Values {
    @Bean
    Converter<String, When> when(Supplier<LocalDate> today) {
        return word -> switch (word) {
            case "today" -> When.on(today.get());
            case "yesterday" -> When.on(today.get().minusDays(1));
            default -> When.parse(word);
        };
    }

    @Bean
    Converter<TypedWords, TagList> tags() {
        return words -> new TagList(Tags.parse(words.list()));
    }

    @Bean
    Converter<String, Tag> tag() {
        return Tag::new;
    }

    @Bean
    Converter<String, Stems> stems() {
        return Stems::parse;
    }

    @Bean
    Converter<String, Decimal> decimal() {
        return Decimal::parse;
    }

    @Bean
    Converter<String, Strength> strength() {
        return Strength::parse;
    }

    @Bean
    Converter<String, Money> money() {
        return Money::parse;
    }

    @Bean
    Converter<String, Amount> amount() {
        return Amount::parse;
    }

    @Bean
    Converter<String, Confidence> confidence() {
        return Confidence::parse;
    }

    @Bean
    Converter<String, Portion> portion() {
        return Portion::parse;
    }

    @Bean
    Converter<String, CultivarName> cultivar() {
        return CultivarName::parse;
    }

    @Bean
    Converter<String, Place> place() {
        return Place::new;
    }

    @Bean
    Converter<String, Share> share() {
        return Share::parse;
    }

    @Bean
    Converter<String, Finding> finding() {
        return Finding::parse;
    }

    @Bean
    Converter<String, Band> band() {
        return Band::parse;
    }
}
