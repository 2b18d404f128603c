package ortet;

import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.InputStream;
import java.util.List;
import org.springframework.boot.Banner;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.logging.LoggingSystem;
import org.springframework.context.ConfigurableApplicationContext;
import ortet.line.Front;
import ortet.screen.Screen;
import ortet.screen.Surroundings;

/** Starts the program; the only class that touches the standard streams and ends the process. */
public final class Main {
    private Main() {}

    /** Run what the arguments ask for and end with its status. */
    public static void main(String[] arguments) {
        Surroundings surroundings = Surroundings.of(
                System.getenv(),
                System.getProperty("ortet.terminals", ""),
                System.getProperty("ortet.size", ""),
                System.console() != null);
        Screen screen = new Screen(
                new FileOutputStream(FileDescriptor.out), new FileOutputStream(FileDescriptor.err), surroundings);
        InputStream in = new FileInputStream(FileDescriptor.in);
        int status;
        try (ConfigurableApplicationContext context = start()) {
            status = context.getBean(Front.class).run(List.of(arguments), in, screen);
        } catch (RuntimeException | LinkageError e) {
            status = Front.couldNotStart(e, screen);
        }
        System.exit(status);
    }

    static ConfigurableApplicationContext start(Class<?>... more) {
        System.setProperty(LoggingSystem.SYSTEM_PROPERTY, LoggingSystem.NONE);
        SpringApplication application = new SpringApplication(Wiring.class);
        application.addPrimarySources(List.of(more));
        application.setWebApplicationType(WebApplicationType.NONE);
        application.setBannerMode(Banner.Mode.OFF);
        application.setLogStartupInfo(false);
        application.setAddCommandLineProperties(false);
        application.setAddConversionService(false);
        application.setRegisterShutdownHook(false);
        application.setLazyInitialization(true);
        application.setListeners(List.of());
        application.setInitializers(List.of());
        return application.run();
    }
}
