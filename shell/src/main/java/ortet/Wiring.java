package ortet;

import java.time.Clock;
import java.time.LocalDate;
import java.util.function.Supplier;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.config.ConfigurableListableBeanFactory;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;
import org.springframework.core.convert.ConversionService;
import org.springframework.core.convert.support.GenericConversionService;
import ortet.book.Judge;
import ortet.commands.AmendCommands;
import ortet.commands.AskCommands;
import ortet.commands.BatchCommands;
import ortet.commands.BookCommands;
import ortet.commands.CareCommands;
import ortet.commands.CohortCommands;
import ortet.commands.Companion;
import ortet.commands.CompareCommands;
import ortet.commands.CopyCommands;
import ortet.commands.CuttingsCommands;
import ortet.commands.DemoCommands;
import ortet.commands.FamilyCommands;
import ortet.commands.FigureCommands;
import ortet.commands.HelpCommands;
import ortet.commands.IdentityCommands;
import ortet.commands.ImportCommands;
import ortet.commands.InventoryCommands;
import ortet.commands.KinCommands;
import ortet.commands.LayerCommands;
import ortet.commands.LifeCommands;
import ortet.commands.MixedCommands;
import ortet.commands.MoneyCommands;
import ortet.commands.PersonCommands;
import ortet.commands.QuestionCommands;
import ortet.commands.RaisingCommands;
import ortet.commands.RecallCommands;
import ortet.commands.RecordCommands;
import ortet.commands.Recording;
import ortet.commands.Shelf;
import ortet.commands.Sitting;
import ortet.commands.SittingCommands;
import ortet.commands.TradeCommands;
import ortet.commands.Values;
import ortet.line.Attendant;
import ortet.line.Commands;
import ortet.line.Conversions;
import ortet.line.Front;
import ortet.line.Help;
import ortet.nursery.Nursery;

/**
 * Puts the program together. Command classes are imported by name: searching the class path for them would cost every
 * start a tenth of a second. Help shows their groups in this order.
 */
@Configuration(proxyBeanMethods = false)
@Import({
    LayerCommands.class,
    CuttingsCommands.class,
    BatchCommands.class,
    CohortCommands.class,
    RaisingCommands.class,
    LifeCommands.class,
    TradeCommands.class,
    CareCommands.class,
    IdentityCommands.class,
    AmendCommands.class,
    BookCommands.class,
    AskCommands.class,
    CopyCommands.class,
    ImportCommands.class,
    PersonCommands.class,
    QuestionCommands.class,
    CompareCommands.class,
    FamilyCommands.class,
    KinCommands.class,
    RecallCommands.class,
    MixedCommands.class,
    MoneyCommands.class,
    InventoryCommands.class,
    RecordCommands.class,
    FigureCommands.class,
    SittingCommands.class,
    DemoCommands.class,
    HelpCommands.class,
    Values.class
})
class Wiring {
    @Bean
    Clock clock() {
        return Clock.systemDefaultZone();
    }

    @Bean
    Supplier<LocalDate> today(Clock clock) {
        return () -> LocalDate.now(clock);
    }

    @Bean
    ConversionService conversions(Supplier<LocalDate> today, ConfigurableListableBeanFactory beans) {
        GenericConversionService conversions = Conversions.plain(today);
        Conversions.addBeans(conversions, beans);
        return conversions;
    }

    @Bean
    Commands commands(ConfigurableListableBeanFactory beans) {
        return Commands.of(beans, () -> beans.getBean(ConversionService.class));
    }

    @Bean
    Judge judge(Clock clock) {
        return new Judge(clock);
    }

    @Bean(destroyMethod = "close")
    Shelf shelf(Sitting sitting) {
        return new Shelf(System.getenv(), sitting);
    }

    @Bean
    Nursery nursery() {
        return new Nursery();
    }

    @Bean
    Sitting sitting() {
        return new Sitting();
    }

    @Bean
    Recording recording(Shelf shelf, Judge judge, Supplier<LocalDate> today, Sitting sitting) {
        return new Recording(shelf, judge, today, sitting);
    }

    @Bean
    Attendant companion(Shelf shelf, Sitting sitting, Judge judge) {
        return new Companion(shelf, sitting, judge);
    }

    @Bean
    Help help(Commands commands) {
        return new Help(commands);
    }

    @Bean
    Front front(Commands commands, ObjectProvider<Attendant> attendant) {
        return new Front(commands, () -> attendant.getIfAvailable(() -> Attendant.NOBODY), System.getenv());
    }
}
