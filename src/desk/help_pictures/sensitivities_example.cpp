#include "clinic/say.hpp"
#include "desk/help_pictures/diagram.hpp"
#include "desk/help_pictures/examples.hpp"
#include "desk/picture/worn_picture.hpp"

namespace sparewell::desk {
namespace {

const PatientRef reacting{"P-0104"};

/// Both times a reaction began, the sleeve had been worn, the liners one after the other.
Clinic two_reactions() {
  Clinic clinic;
  const auto add = [&](const char* code, Kind kind, Material material) {
    Item item;
    item.code = {code};
    item.kind = kind;
    item.material = material;
    clinic.items.push_back(std::move(item));
  };
  add("L1", Kind::liner, Material::silicone);
  add("L5", Kind::liner, Material::urethane);
  add("S3", Kind::sleeve, Material::neoprene);
  const auto wear = [&](const char* code, int from, int until) {
    Unit unit;
    unit.patient = reacting;
    unit.item = {code};
    unit.issued_on = example_day - days{from};
    if (until > 0) {
      unit.ended_on = example_day - days{until};
      unit.end_reason = EndReason::worn;
    }
    unit.copy = static_cast<int>(clinic.units.size()) + 1;
    clinic.units.push_back(std::move(unit));
  };
  wear("L1", 420, 170);
  wear("L5", 170, 0);
  wear("S3", 330, 230);
  wear("S3", 60, 0);
  clinic.reactions = {{reacting,
                       Side::left,
                       example_day - days{290},
                       example_day - days{275},
                       {said("redness")},
                       ""},
                      {reacting,
                       Side::left,
                       example_day - days{40},
                       std::nullopt,
                       {said("itching"), said("redness")},
                       ""}};
  return clinic;
}

}  // namespace

picture::Maker sensitivities_example() {
  return as_example(worn_picture(worn_chart(two_reactions(), reacting, example_day), reacting.text),
                    said("Help with sensitivities: an example"),
                    said("An example: what was worn before each reaction. It shows what to look "
                         "into, and proves nothing."));
}

}  // namespace sparewell::desk
