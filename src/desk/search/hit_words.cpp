#include "desk/search/hit_words.hpp"

#include "clinic/say.hpp"
#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

std::string described(const Day& day, const ItemCode& code) {
  const auto* item = day.index().item(code);
  return item == nullptr ? code.text : fmt::format("{}  {}", code.text, item_words(*item));
}

Destination to_order(const std::string& ref, const std::string& supplier) {
  Destination there;
  there.to = Destination::To::delivery;
  there.order = OrderName{ref, supplier};
  return there;
}

Destination to_shelf(const ItemCode& item, const std::string& lot) {
  Destination there;
  there.to = Destination::To::shelf;
  there.item = item;
  there.lot = lot;
  return there;
}

Destination to_patient(const PatientRef& patient, std::optional<std::size_t> unit) {
  Destination there;
  there.to = Destination::To::patient;
  there.patient = patient;
  there.unit = unit;
  return there;
}

}  // namespace

std::string hit_kind_words(HitKind kind) {
  switch (kind) {
    case HitKind::patient:
      return said("Patient");
    case HitKind::part:
      return said("Part");
    case HitKind::item:
      return said("Item");
    case HitKind::lot:
      return said("Lot on the shelf");
    case HitKind::order:
      return said("Order");
    case HitKind::claim:
      return said("Claim");
    case HitKind::invoice:
      return said("Invoice");
  }
  return {};
}

Hit patient_hit(const Day& day, std::size_t position) {
  const auto& patient = day.clinic().patients[position];
  Hit hit;
  hit.title = patient_words(day, patient.ref);
  hit.context = patient.next_visit ? say("next visit {}", date_words(*patient.next_visit))
                                   : said("no visit booked");
  hit.there = to_patient(patient.ref, std::nullopt);
  return hit;
}

Hit part_hit(const Day& day, std::size_t position) {
  const auto& unit = day.clinic().units[position];
  Hit hit;
  hit.kind = HitKind::part;
  hit.title = unit.serial.empty() ? say("lot {}", unit.lot) : say("serial {}", unit.serial);
  const auto whose = patient_words(day, unit.patient);
  const auto what = described(day, unit.item);
  hit.context = unit.ended_on ? say("{}; {}, ended {}", what, whose, date_words(*unit.ended_on))
                              : say("{}; {}, issued {}", what, whose, date_words(unit.issued_on));
  hit.there = to_patient(unit.patient, position);
  return hit;
}

Hit item_hit(const Day& day, std::size_t position) {
  const auto& item = day.clinic().items[position];
  Hit hit;
  hit.kind = HitKind::item;
  hit.title = described(day, item.code);
  hit.context = item.supplier.text;
  hit.there = to_shelf(item.code, {});
  return hit;
}

Hit lot_hit(const Day& day, std::size_t position) {
  const auto& level = day.clinic().shelf[position];
  Hit hit;
  hit.kind = HitKind::lot;
  hit.title = say("lot {}", level.lot.lot);
  hit.context =
      say_n("{}; {} piece at {}", "{}; {} pieces at {}", static_cast<unsigned long>(level.quantity),
            described(day, level.lot.item), level.quantity, shown_place(level.place));
  hit.there = to_shelf(level.lot.item, level.lot.lot);
  return hit;
}

Hit order_hit(const Day& day, std::size_t position) {
  const auto& line = day.clinic().order_lines[position];
  Hit hit;
  hit.kind = HitKind::order;
  hit.title = line.order_ref;
  hit.context = say("{}, ordered {}", line.supplier.text, date_words(line.ordered_on));
  hit.there = to_order(line.order_ref, line.supplier.text);
  return hit;
}

Hit claim_hit(const Day& day, std::size_t position) {
  const auto& line = day.clinic().claim_lines[position];
  Hit hit;
  hit.kind = HitKind::claim;
  hit.title = line.claim_ref;
  hit.context =
      say("{}, service of {}", patient_words(day, line.patient), date_words(line.service_date));
  hit.there = to_patient(line.patient, std::nullopt);
  return hit;
}

Hit invoice_hit(const Day& day, std::size_t position) {
  const auto& line = day.clinic().invoice_lines[position];
  Hit hit;
  hit.kind = HitKind::invoice;
  hit.title = line.invoice_ref;
  hit.context = line.order_ref.empty()
                    ? line.supplier.text
                    : say("{}, for order {}", line.supplier.text, line.order_ref);
  if (line.order_ref.empty()) {
    hit.there.to = Destination::To::billing;
  } else {
    hit.there = to_order(line.order_ref, line.supplier.text);
  }
  return hit;
}

}  // namespace sparewell::desk
