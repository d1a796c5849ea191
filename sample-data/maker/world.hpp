/// Lets the days pass: patients come, parts wear out, replacements are handed out.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "clinic/clinic.hpp"
#include "people.hpp"
#include "shop.hpp"

namespace sparewell::sample {

/// A part in a patient's hands that ages.
struct Worn {
  std::size_t unit = 0;  ///< position in Clinic::units
  double age = 0;        ///< wear age reached, in days of reference use
  double limit = 0;      ///< wear age at which it is worn out
  Date mishap;           ///< lost, or ended for another reason, unless it wears out before
};

/// One function of a suspension chain.
struct Slot {
  ModelId model = ModelId::locking_silicone;
  std::size_t item = 0;
  int wanted = 1;   ///< pieces in use together
  int waiting = 0;  ///< pieces asked for and not handed out yet
  std::vector<Worn> worn;
};

struct FittedLimb {
  std::vector<Slot> slots;
  std::vector<std::size_t> drawer;        ///< units that nobody wears
  std::optional<std::size_t> prosthesis;  ///< position in Clinic::prostheses
  Date measure_on;
  std::optional<Date> reaction_on;
  int chain = 0;  ///< counts changes of the chain, so that older requests lapse
};

struct Visitor {
  Person person;
  Random random;
  std::vector<FittedLimb> limbs;
  Usage in_force;                ///< the last known value of every field
  std::size_t usage_taken = 0;   ///< rows of person.usage that are in force or were
  std::array<double, 7> rate{};  ///< wear rate of each kind under `in_force`
  bool present = false;
};

class World {
 public:
  explicit World(const Wishes& wishes);
  /// Runs from the first day to the last and returns what the clinic wrote down.
  Clinic run();

 private:
  struct Request {
    std::size_t visitor;
    std::size_t limb;
    std::size_t slot;
    int chain;
    Date ready_on;
  };

  void pass_day(Date today);
  void pass_day(std::size_t visitor, Date today);
  void start(std::size_t visitor, Date today);
  void start_limb(std::size_t visitor, std::size_t limb, Date today);
  void bring_old_hardware(Visitor& visitor, std::size_t limb, Date today);
  void take_usage(Visitor& visitor, Date today);
  void wear(std::size_t visitor, std::size_t limb, std::size_t slot, Date today);
  void refill(std::size_t visitor, std::size_t limb, std::size_t slot, Date ready_on);
  void measure(std::size_t visitor, std::size_t limb, Date today);
  void note_circumference(Visitor& visitor, std::size_t limb, double at_cm, double size,
                          Date today);
  void react(std::size_t visitor, std::size_t limb, Date today);
  void deliver_definitive(std::size_t visitor, std::size_t limb, Date today);
  void leave(std::size_t visitor, Date today);
  void recall(Date today);

  void change_item(Slot& slot, std::size_t item);
  void end_all(Slot& slot, Date today, EndReason reason);
  void end(Slot& slot, std::size_t position, Date today, EndReason reason);
  void serve(Date today);
  bool hand_out(const Request& request, Date today);
  std::size_t add_unit(Visitor& visitor, std::size_t limb, const Item& item, const Lot& lot,
                       Date today);
  void wear_from_now(Visitor& visitor, Slot& slot, std::size_t unit, Date today);
  [[nodiscard]] Slot make_slot(ModelId model, const Limb& limb) const;
  void add_prosthesis(Visitor& visitor, std::size_t limb, Suspension suspension, Stage stage,
                      Date today);

  Wishes wishes_;
  Catalogue catalogue_;
  Shop shop_;
  std::vector<Visitor> visitors_;
  std::vector<Request> requests_;
  Clinic clinic_;
  int serials_made_ = 0;
};

/// Circumference 20 cm above the distal end, where sleeves are sized, for one measured at 4 cm.
[[nodiscard]] inline double upper_circumference(double at_four_cm) {
  return 1.28 * at_four_cm;
}

}  // namespace sparewell::sample
