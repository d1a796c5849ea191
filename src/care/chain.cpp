#include "care/chain.hpp"

#include <algorithm>

namespace sparewell::care {

std::vector<Function> functions_of(Suspension suspension, bool sealed) {
  std::vector<Function> needed;
  switch (suspension) {
    case Suspension::pin:
      return {Function::locking_liner, Function::pin, Function::lock};
    case Suspension::lanyard:
      return {Function::locking_liner, Function::lock};
    case Suspension::sleeve:
      return {Function::cushion_liner, Function::sleeve};
    case Suspension::suction:
    case Suspension::vacuum:
      if (sealed) {
        needed = {Function::sealing_liner, Function::valve};
      } else {
        needed = {Function::cushion_liner, Function::sleeve, Function::valve};
      }
      if (suspension == Suspension::vacuum) needed.push_back(Function::pump);
      return needed;
    default:
      return {};
  }
}

std::vector<Function> functions_of(const Item& item) {
  switch (item.kind) {
    case Kind::liner:
      if (item.attachment == Attachment::locking) return {Function::locking_liner};
      if (item.attachment == Attachment::cushion) return {Function::cushion_liner};
      if (item.attachment == Attachment::seal) return {Function::sealing_liner};
      return {};
    case Kind::sleeve:
      return {Function::sleeve};
    case Kind::pin:
      return {Function::pin};
    case Kind::lock:
      return {Function::lock};
    case Kind::valve:
      return {Function::valve};
    case Kind::pump:
      return {Function::pump};
    default:
      return {};
  }
}

std::vector<Function> missing_after(const Item& item, const Worn& worn) {
  if (!worn.prosthesis) return {};
  auto has = functions_of(item);
  for (const Item* other : worn.items) {
    for (const auto function : functions_of(*other)) has.push_back(function);
  }
  const auto held = [&](Function function) {
    return std::ranges::find(has, function) != has.end();
  };
  std::vector<Function> missing;
  for (const auto function :
       functions_of(worn.prosthesis->suspension, held(Function::sealing_liner))) {
    if (!held(function)) missing.push_back(function);
  }
  return missing;
}

}  // namespace sparewell::care
