package ortet.line;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Says how help shows the value of a parameter; without it the word follows from the type ({@code DAY}, {@code TAG}).
 */
@Documented
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.PARAMETER)
public @interface Word {
    /** The word that stands for the value in the usage line, in capitals: {@code MM}. */
    String value() default "";

    /** What the words mean, for {@code @Arguments}, which has no description of its own. */
    String description() default "";

    /** Whether {@code @Arguments} may be none at all. */
    boolean optional() default false;

    /** Whether what is named is new and begins with this line: a tag tied on for the first time. */
    boolean begins() default false;

    /** The values that are allowed, where the type does not tell; others are refused before the command runs. */
    String[] allowed() default {};
}
