#include "desk/day_views.hpp"

#include "desk/patient_list.hpp"

namespace sparewell::desk {

DayViews prepare_views(DayPtr day) {
  DayViews made;
  if (!day) return made;
  if (day->worked_out()) made.work = find_work(*day);
  made.index = std::make_shared<const SearchIndex>(day);
  made.patients = patient_rows(*day);
  made.day = std::move(day);
  return made;
}

}  // namespace sparewell::desk
