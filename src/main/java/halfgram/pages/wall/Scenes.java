package halfgram.pages.wall;

import halfgram.desk.CrewInForce;
import halfgram.desk.CrewPlans;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.desk.RollCall;
import halfgram.pages.Rooms;
import halfgram.pages.StationNames;
import halfgram.station.Crew;
import halfgram.station.Person;
import halfgram.web.Visit;
import java.util.Optional;

/** Opens stations as they are now. */
record Scenes(Desk desk, Plans plans, CrewPlans crewPlans) {

  /**
   * A station as the request found it.
   *
   * @throws halfgram.web.Halt when there is none of that name
   */
  Scene open(Visit visit, String station) {
    return open(visit, station, Rooms.house(desk, visit));
  }

  /** The same station as it is by now, for this cook. */
  Scene again(Scene scene, Visit visit, Person cook) {
    return open(visit, scene.station(), desk.again(scene.house())).by(cook);
  }

  private Scene open(Visit visit, String station, House house) {
    StationNames.stations(house, station);
    InForce inForce = plans.open(house, house.day(desk.now()), visit.who());
    Optional<Person> cook = visit.cook().flatMap(code -> house.book().findPerson(code));
    var crew = crewPlans.shown(house, inForce, visit.who()).map(CrewInForce::plan);
    Crew roll = new RollCall(desk).crew(house, inForce.plan().day());
    return Scene.of(house, inForce, crew, roll, station, cook, visit.wallWords(), desk.now());
  }
}
