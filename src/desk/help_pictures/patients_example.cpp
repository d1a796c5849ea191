#include "clinic/say.hpp"
#include "desk/help_pictures/diagram.hpp"
#include "desk/help_pictures/examples.hpp"
#include "desk/limb_drawing/chain_picture.hpp"
#include "desk/patient_findings.hpp"

namespace sparewell::desk {
namespace {

const PatientRef pin_wearer{"P-0103"};

Item worn_item(const char* code, Kind kind, Material material, const char* size) {
  Item item;
  item.code = {code};
  item.kind = kind;
  item.material = material;
  item.size_label = size;
  return item;
}

/// A pin suspension with a liner and a lock, and no pin.
Assessment pin_suspension() {
  Assessment made;
  made.today = example_day;
  auto& clinic = made.clinic;
  auto liner = worn_item("LN01-26", Kind::liner, Material::silicone, "26");
  liner.attachment = Attachment::locking;
  liner.size_min_cm = 25;
  liner.size_max_cm = 27;
  liner.size_at_cm = 4;
  liner.thread = "M10";
  auto lock = worn_item("LK02", Kind::lock, Material::metal, "");
  lock.thread = "M10";
  clinic.items = {liner, lock};
  Patient patient;
  patient.ref = pin_wearer;
  clinic.patients = {patient};
  clinic.prostheses = {{pin_wearer, Side::left, Level::transtibial, Suspension::pin,
                        Stage::definitive, example_day - days{300}, std::nullopt}};
  clinic.measurements = {{pin_wearer, Side::left, example_day - days{10}, 4, 26}};
  const auto wear = [&](const Item& item, int age, double scale) {
    Unit unit;
    unit.patient = pin_wearer;
    unit.item = item.code;
    unit.issued_on = example_day - days{age};
    unit.share = 1;
    made.lives.push_back(
        {clinic.units.size(),
         wear::UnitLife{example_day, double(age), 4.0, scale, {{example_day, 1.0}}}});
    clinic.units.push_back(std::move(unit));
  };
  wear(clinic.items[0], 150, 300);
  wear(clinic.items[1], 240, 700);
  return made;
}

}  // namespace

picture::Maker patients_example() {
  const Day day{pin_suspension()};
  auto chains = limb_chains(day, pin_wearer, findings_of(day.clinic(), pin_wearer, example_day));
  return as_example(chain_picture(std::move(chains), pin_wearer.text, example_day),
                    said("Help with patients: an example"),
                    said("An example: what holds a limb on, how long it lasts, what is missing"));
}

}  // namespace sparewell::desk
