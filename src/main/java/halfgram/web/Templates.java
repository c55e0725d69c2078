package halfgram.web;

import halfgram.words.Messages;
import java.lang.reflect.Method;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import ognl.OgnlContext;
import ognl.OgnlException;
import ognl.OgnlRuntime;
import ognl.PropertyAccessor;
import org.jspecify.annotations.Nullable;
import org.thymeleaf.TemplateEngine;
import org.thymeleaf.cache.StandardCacheManager;
import org.thymeleaf.context.Context;
import org.thymeleaf.context.ITemplateContext;
import org.thymeleaf.messageresolver.AbstractMessageResolver;
import org.thymeleaf.templatemode.TemplateMode;
import org.thymeleaf.templateresolver.ClassLoaderTemplateResolver;

/**
 * Pages from templates. A template reads records by the names of their components, and says {@code
 * #{key(args)}} from the message file of the page's language.
 */
public final class Templates {
  private static final String MESSAGES = "halfgram.messages";

  private static final int MOST = 4096;

  private static final int NO_LIMIT = -1;

  private record Fragment(
      String template, String name, String language, String root, Object value) {}

  /** One for all: it keeps every template once it is read. */
  private static final TemplateEngine ENGINE = engine();

  private final Map<Fragment, String> kept = new UsedLast<>(MOST);

  private static TemplateEngine engine() {
    ClassLoaderTemplateResolver resolver = new ClassLoaderTemplateResolver();
    resolver.setPrefix("halfgram/pages/");
    resolver.setSuffix(".html");
    resolver.setTemplateMode(TemplateMode.HTML);
    resolver.setCharacterEncoding("UTF-8");
    resolver.setCacheable(true);
    TemplateEngine engine = new TemplateEngine();
    engine.setTemplateResolver(resolver);
    engine.setMessageResolver(new FromMessages());
    engine.setCacheManager(everything());
    OgnlRuntime.setPropertyAccessor(Record.class, new Components());
    return engine;
  }

  /** All templates and expressions there are: more than a cache holds unless it is told. */
  private static StandardCacheManager everything() {
    StandardCacheManager caches = new StandardCacheManager();
    caches.setTemplateCacheMaxSize(NO_LIMIT);
    caches.setTemplateCacheUseSoftReferences(false);
    caches.setExpressionCacheMaxSize(NO_LIMIT);
    caches.setExpressionCacheUseSoftReferences(false);
    return caches;
  }

  /**
   * Renders a template, or one fragment of it.
   *
   * @param fragment name of the fragment; empty for the whole page
   */
  public String render(
      String template, Optional<String> fragment, Messages words, Map<String, Object> model) {
    Map<String, Object> variables = new HashMap<>(model);
    variables.put(MESSAGES, words);
    Context context = new Context(java.util.Locale.ROOT, variables);
    return fragment.isPresent()
        ? ENGINE.process(template, Set.of(fragment.get()), context)
        : ENGINE.process(template, context);
  }

  /**
   * Fragments in the words of a page, each rendered once for what it shows.
   *
   * @param root start of every address of the kitchen
   */
  Kept kept(Messages words, String root) {
    return new Kept(words, root);
  }

  /** What such a fragment has of its page. */
  public final class Kept {
    private final Messages words;
    private final String root;

    private Kept(Messages words, String root) {
      this.words = words;
      this.root = root;
    }

    public String getRoot() {
      return root;
    }

    /**
     * Renders a fragment, or answers what it was for the same value.
     *
     * @param value what it shows, as {@code v}; everything that it shows, but for the addresses
     */
    public String kept(String template, String name, Object value) {
      Fragment fragment = new Fragment(template, name, words.language(), root, value);
      synchronized (kept) {
        String known = kept.get(fragment);
        if (known != null) {
          return known;
        }
      }
      String made = render(template, Optional.of(name), words, Map.of("v", value, "page", this));
      synchronized (kept) {
        kept.put(fragment, made);
      }
      return made;
    }
  }

  /** Sentences from the message file of the page. */
  private static final class FromMessages extends AbstractMessageResolver {
    @Override
    public String resolveMessage(
        ITemplateContext context,
        @Nullable Class<?> origin,
        String key,
        Object @Nullable [] parameters) {
      Messages words = (Messages) context.getVariable(MESSAGES);
      return words.say(key, parameters == null ? new Object[0] : parameters);
    }

    @Override
    public String createAbsentMessageRepresentation(
        ITemplateContext context,
        @Nullable Class<?> origin,
        String key,
        Object @Nullable [] parameters) {
      throw new IllegalStateException("no sentence for " + key);
    }
  }

  /** A record's components as properties. */
  @SuppressWarnings("rawtypes")
  private static final class Components implements PropertyAccessor {
    private record Key(Class<?> type, String name) {}

    private final Map<Key, Method> known = new ConcurrentHashMap<>();

    @Override
    public Object getProperty(@Nullable Map context, Object target, Object name)
        throws OgnlException {
      try {
        return known
            .computeIfAbsent(
                new Key(target.getClass(), name.toString()), key -> method(key.type(), key.name()))
            .invoke(target);
      } catch (ReflectiveOperationException | RuntimeException e) {
        throw new OgnlException(target.getClass().getName() + "." + name, e);
      }
    }

    private static Method method(Class<?> type, String name) {
      try {
        Method method = type.getMethod(name);
        method.setAccessible(true);
        return method;
      } catch (NoSuchMethodException e) {
        throw new IllegalArgumentException(type.getName() + " has no " + name, e);
      }
    }

    @Override
    public void setProperty(Map context, Object target, Object name, Object value)
        throws OgnlException {
      throw new OgnlException("records do not change");
    }

    @Override
    public String getSourceAccessor(OgnlContext context, Object target, Object index) {
      throw new UnsupportedOperationException();
    }

    @Override
    public String getSourceSetter(OgnlContext context, Object target, Object index) {
      throw new UnsupportedOperationException();
    }
  }
}
