#include "desk/measuring.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "care/circumference.hpp"
#include "clinic/say.hpp"
#include "desk/length_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

constexpr const char* ask_again = to_say("ask again");
constexpr const char* record_it = to_say("record it all the same");
constexpr double usual_height_cm = 4;

std::string refusal_of(const MeasuredLimb& measured, Date today) {
  if (!(measured.circumference_cm > 0 && measured.circumference_cm <= most_circumference_cm)) {
    return say("A circumference of {} cannot be; write one above 0 and up to {}.",
               short_length_words(measured.circumference_cm),
               short_length_words(most_circumference_cm));
  }
  if (!(measured.at_cm >= 0 && measured.at_cm <= most_height_cm)) {
    return say("A height of {} cannot be; write the height above the end of the limb, 0 to {}.",
               short_length_words(measured.at_cm), short_length_words(most_height_cm));
  }
  if (measured.on > today) {
    return say("{} is still to come; write the day on which the limb was measured.",
               date_words(measured.on));
  }
  return "";
}

std::vector<store::Row<Measurement>> of_side(const store::Snapshot& snapshot,
                                             const MeasuredLimb& measured) {
  auto rows = snapshot.all<Measurement>();
  std::erase_if(rows, [&](const store::Row<Measurement>& row) {
    return row.record.patient != measured.patient || row.record.side != measured.side;
  });
  return rows;
}

/// Empty where the circumference may be right.
std::string jump_of(const std::vector<store::Row<Measurement>>& rows,
                    const MeasuredLimb& measured) {
  std::vector<Measurement> before;
  for (const auto& row : rows) {
    if (row.record.measured_on < measured.on) before.push_back(row.record);
  }
  const auto readings =
      care::readings_at(before, measured.patient, measured.side, measured.at_cm, measured.on);
  if (readings.empty()) return "";
  const auto& last = readings.back();
  const double change = measured.circumference_cm / last.circumference_cm - 1;
  if (std::abs(change) <= greatest_jump) return "";
  const auto now = short_length_words(measured.circumference_cm);
  const auto before_words = length_words(last.circumference_cm);
  const auto at = short_length_words(measured.at_cm);
  const double percent = std::abs(change) * 100;
  return change > 0
             ? say("{} is {:.0f} % more than the {} at {} on {}; measure again, and say that "
                   "you are sure if it is so.",
                   now, percent, before_words, at, date_words(last.day))
             : say("{} is {:.0f} % less than the {} at {} on {}; measure again, and say that "
                   "you are sure if it is so.",
                   now, percent, before_words, at, date_words(last.day));
}

std::string note_of(const MeasuredLimb& measured, const char* done) {
  return say("{} {}, {} at {} on {}: {}.", measured.patient.text, shown_word(measured.side),
             short_length_words(measured.circumference_cm), short_length_words(measured.at_cm),
             date_words(measured.on), done);
}

std::optional<double> read_length(const std::string& text) {
  const auto cm = typed_length(text);
  if (!cm || !std::isfinite(*cm)) return std::nullopt;
  // Inches are recorded in whole tenths of a millimetre.
  return length_unit() == LengthUnit::inch ? std::round(*cm * 100) / 100 : *cm;
}

/// One of `offered` as it is, where the form wrote it with fewer decimals.
std::optional<double> read_height(const std::string& text, const std::set<double>& offered) {
  for (const double cm : offered) {
    if (text == length_number(cm)) return cm;
  }
  return read_length(text);
}

Expected<Booked> book_answers(store::UnitOfWork& work, const PatientRef& patient, Date today,
                              const std::set<double>& heights,
                              const std::vector<std::string>& given) {
  const auto side = parse_word<Side>(given[0]);
  if (!side) return refuse(say("Side: '{}' is not left or right.", given[0]));
  const auto at_cm = read_height(given[1], heights);
  if (!at_cm) {
    return refuse(say("Height: '{}' is not a number of {}, such as {}.", given[1],
                      length_unit_words(), length_number(usual_height_cm)));
  }
  const auto circumference = read_length(given[2]);
  if (!circumference) {
    return refuse(say("Circumference: '{}' is not a number of {}, such as {}.", given[2],
                      length_unit_words(), length_number(26.4)));
  }
  const auto on = parse_iso_date(given[3]);
  if (!on) {
    return refuse(say("Day: '{}' is not a day; write it as {}.", given[3], iso_text(today)));
  }
  return record_measurement(
      work, {patient, *side, *at_cm, *circumference, *on, given[4] == record_it}, today);
}

/// Heights at which the sizes of what the patient wears are stated, and at which they were
/// measured; a usual one where there are none.
std::set<double> heights_for(const Day& day, const PatientRef& patient) {
  std::set<double> heights;
  for (const auto position : day.units_of(patient)) {
    const Unit& unit = day.clinic().units[position];
    const Item* item = day.index().item(unit.item);
    if (unit.in_use_on(day.today()) && item != nullptr && item->size_at_cm) {
      heights.insert(*item->size_at_cm);
    }
  }
  for (const Measurement& each : day.clinic().measurements) {
    if (each.patient == patient) heights.insert(each.at_cm);
  }
  if (heights.empty()) heights.insert(usual_height_cm);
  return heights;
}

std::string first_side(const Day& day, const PatientRef& patient) {
  for (const Prosthesis& each : day.clinic().prostheses) {
    if (each.patient == patient && !each.ended_on) return std::string{word(each.side)};
  }
  return std::string{word(Side::left)};
}

}  // namespace

Expected<Booked> record_measurement(store::UnitOfWork& work, const MeasuredLimb& measured,
                                    Date today) {
  if (!work.patient(measured.patient)) {
    return refuse(say("There is no patient '{}'; check the reference.", measured.patient.text));
  }
  if (auto refusal = refusal_of(measured, today); !refusal.empty()) return refuse(refusal);
  const auto rows = of_side(work, measured);
  const auto same = std::ranges::find_if(rows, [&](const store::Row<Measurement>& row) {
    return row.record.measured_on == measured.on && row.record.at_cm == measured.at_cm;
  });
  const Measurement record{measured.patient, measured.side, measured.on, measured.at_cm,
                           measured.circumference_cm};
  Booked made;
  if (same != rows.end() && same->record == record) {
    made.notes.push_back(note_of(measured, said("recorded already")));
    return made;
  }
  if (same != rows.end() && !measured.sure) {
    return refuse(say("For that day {} are recorded at {}; say that you are sure to correct them.",
                      short_length_words(same->record.circumference_cm),
                      short_length_words(measured.at_cm)));
  }
  if (!measured.sure) {
    if (auto jump = jump_of(rows, measured); !jump.empty()) return refuse(jump);
  }
  if (same != rows.end()) {
    work.put_instead(same->id, record);
    made.notes.push_back(note_of(measured, said("corrected")));
  } else {
    work.put(record);
    made.notes.push_back(note_of(measured, said("recorded")));
  }
  return made;
}

StockForm measurement_form(const Day& day, const PatientRef& patient) {
  StockForm form{said("Record a measurement"), {}, {}, said("&Record"), {},
                 to_say("a limb was measured")};
  form.intro = say(
      "For {}. Measure at the heights at which the sizes are stated, at the same time of the day "
      "and as long after taking the prosthesis off as the last time.",
      patient_words(day, patient));
  const auto heights = heights_for(day, patient);
  std::vector<std::string> offered;
  for (const double height : heights) offered.push_back(length_number(height));
  form.fields = {
      {said("&Side"),
       first_side(day, patient),
       said("Which limb"),
       {to_say("left"), to_say("right")},
       true},
      {say("&Height, {}", length_unit_words()), offered.front(), said("Above the end of the limb"),
       offered},
      {say("&Circumference, {}", length_unit_words()), "", say("Such as {}", length_number(26.4))},
      {said("&Measured on"), iso_text(day.today()), said("The day, such as 2026-11-25")},
      {said("If it &differs much"),
       ask_again,
       said("From the last one by more than 20 %, or from one of the same day"),
       {ask_again, record_it},
       true}};
  form.book = [patient, heights, today = day.today()](store::UnitOfWork& work,
                                                      const std::vector<std::string>& given) {
    return book_answers(work, patient, today, heights, given);
  };
  return form;
}

}  // namespace sparewell::desk
