package halfgram.pages.today;

import java.util.List;

/**
 * One task on the prep sheet.
 *
 * @param where its station, where the group does not say
 * @param planned when it is to start and who does it; empty when it has no place, or is over
 * @param makes what it gives, each output on its own; empty for a step before the last
 * @param part how large the make is that it is a step of; empty for the last step
 * @param then how long it stands alone afterwards
 * @param notBefore from when it may start by its deliveries; empty when the state says so
 * @param contains allergens, in capitals
 * @param kit what it shares kit with and must be free from; empty where nothing is to do
 */
record Row(
    String key,
    String href,
    String start,
    String startWhy,
    List<String> planned,
    String what,
    String where,
    List<Made> makes,
    String part,
    String partWhy,
    String serves,
    String ready,
    String readyWhy,
    String then,
    String notBefore,
    String contains,
    String kit,
    StateWords state) {

  /**
   * What a task gives of one output.
   *
   * @param name of the output, when the formula has several
   * @param onHand what tubs give, so that it need not be made
   * @param needed what is still needed
   * @param keeps until when, where, how cold
   */
  record Made(
      String name,
      String amount,
      String why,
      String onHand,
      String onHandWhy,
      String needed,
      String neededWhy,
      String keeps,
      String keepsWhy,
      String safety) {}
}
