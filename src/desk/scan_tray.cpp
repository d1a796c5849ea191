#include "desk/scan_tray.hpp"

#include <algorithm>
#include <set>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "clinic/say.hpp"
#include "desk/label_item.hpp"
#include "desk/wording.hpp"
#include "exchange/barcode/read_label.hpp"

namespace sparewell::desk {
namespace {

std::string pieces_words(int count) {
  return say_n("{} piece", "{} pieces", static_cast<unsigned long>(count), number_words(count));
}

ScanAnswer refused(const std::string& why) {
  return {ScanAnswer::Sort::refused, say("Not taken: {}", why)};
}

}  // namespace

int ScanTray::Lot::pieces() const {
  int sum = 0;
  for (const Package* package : packages) sum += package->pieces;
  return sum;
}

ScanTray::ScanTray(DayPtr day, std::string order_ref, std::string supplier, std::string place)
    : day_{std::move(day)},
      order_ref_{std::move(order_ref)},
      supplier_{std::move(supplier)},
      place_{std::move(place)},
      servings_{supply::servings(day_->clinic(), day_->today())} {}

ScanAnswer ScanTray::scan(const std::string& text) {
  const auto label = exchange::read_label(text, day_->today());
  if (!label) return refused(label.error().sentence);
  if (!label->names_item()) return add_second(text, *label);
  const auto item = item_of_label(*label, day_->clinic().items);
  if (!item) return refused(item.error().sentence);
  return add(text, *label, *item);
}

ScanAnswer ScanTray::add(const std::string& text, const exchange::Label& label, const Item& item) {
  Package package{item, label.lot, label.use_by, label.serial, label.quantity.value_or(1),
                  {},   {text}};
  if (const auto why = why_refused(package, nullptr); !why.empty()) return refused(why);
  const int before = scanned(item.code);
  for (int piece = 0; piece < package.pieces; ++piece) {
    package.goes_to.push_back(goes_to(item.code, before + piece));
  }
  scans_.push_back(packages_);
  packages_.push_back(package);
  const bool undated = item.shelf_life_days && !package.use_by;
  ScanAnswer answer{ScanAnswer::Sort::taken, words(package)};
  if (undated || !label.doubt.empty()) answer.sort = ScanAnswer::Sort::look;
  if (!label.doubt.empty()) answer.sentence += ' ' + label.doubt;
  if (undated) {
    answer.sentence +=
        ' ' + std::string{said("The label gave no use-by date: scan its second barcode.")};
  }
  return answer;
}

ScanAnswer ScanTray::add_second(const std::string& text, const exchange::Label& label) {
  if (packages_.empty()) {
    return refused(said("this barcode does not say which item it is; scan the other one first."));
  }
  Package with = packages_.back();
  const auto differs = [](const std::string& had, const std::string& now) {
    return !had.empty() && !now.empty() && had != now;
  };
  if (differs(with.lot, label.lot) || differs(with.serial, label.serial) ||
      (with.use_by && label.use_by && *with.use_by != *label.use_by)) {
    return refused(
        say("this second barcode does not agree with the label of {} scanned before it; "
            "scan the package's other barcode first.",
            with.item.code.text));
  }
  if (with.lot.empty()) with.lot = label.lot;
  if (with.serial.empty()) with.serial = label.serial;
  if (!with.use_by) with.use_by = label.use_by;
  with.texts.push_back(text);
  if (const auto why = why_refused(with, &packages_.back()); !why.empty()) return refused(why);
  scans_.push_back(packages_);
  packages_.back() = with;
  return {label.doubt.empty() ? ScanAnswer::Sort::taken : ScanAnswer::Sort::look,
          label.doubt.empty() ? words(with) : words(with) + ' ' + label.doubt};
}

std::string ScanTray::why_refused(const Package& package, const Package* instead_of) const {
  const std::string& code = package.item.code.text;
  const auto lines = lines_of(package.item.code);
  if (lines.empty()) {
    return order_ref_.empty()
               ? say("no open order has pieces of {} to come; set it aside and ask the supplier.",
                     code)
               : say("order {} has no pieces of {} to come: wrong item; set it aside and ask the "
                     "supplier.",
                     order_ref_, code);
  }
  if (package.use_by && *package.use_by < day_->today()) {
    return say("{} expired on {}; set it aside and ask the supplier.", code,
               date_words(*package.use_by));
  }
  if (!package.serial.empty()) {
    for (const auto* packages : {&in_already_, &packages_}) {
      for (const Package& other : *packages) {
        if (&other == instead_of || other.serial != package.serial ||
            other.item.code != package.item.code) {
          continue;
        }
        return say("serial number {} of {} was scanned already.", package.serial, code);
      }
    }
    for (const Unit& unit : day_->clinic().units) {
      if (unit.item == package.item.code && unit.serial == package.serial) {
        return say(
            "serial number {} of {} is recorded already, with patient {}; compare the label, "
            "and receive it by hand if it has come again.",
            package.serial, code, unit.patient.text);
      }
    }
  }
  int to_come = 0;
  for (const OrderLine* line : lines) to_come += line->outstanding();
  const int before = scanned(package.item.code) - (instead_of ? instead_of->pieces : 0);
  if (before + package.pieces > to_come) {
    return say(
        "only {} of {} were still to come, and {} are in already; count again, and receive "
        "by hand what is too many.",
        pieces_words(to_come), code, before);
  }
  return {};
}

std::string ScanTray::words(const Package& package) const {
  std::string what = package.item.code.text;
  if (!package.lot.empty()) what = say("{}, lot {}", what, package.lot);
  if (package.use_by) what = say("{}, use by {}", what, date_words(*package.use_by));
  if (!package.serial.empty()) what = say("{}, serial number {}", what, package.serial);
  if (package.pieces > 1) what = fmt::format("{}, {}", what, pieces_words(package.pieces));
  std::vector<std::string> places;
  for (const std::string& place : package.goes_to) {
    if (std::ranges::find(places, place) == places.end()) places.push_back(place);
  }
  const auto lines = lines_of(package.item.code);
  int to_come = 0;
  std::set<std::string> refs;
  for (const OrderLine* line : lines) {
    to_come += line->outstanding();
    refs.insert(line->order_ref);
  }
  return say("{}: {}. {} of {} to come on {} are in.", what, list_words(places),
             scanned(package.item.code), to_come, list_words({refs.begin(), refs.end()}));
}

ScanAnswer ScanTray::undo() {
  if (scans_.empty()) return {ScanAnswer::Sort::look, said("There is no scan to take back.")};
  const auto now = std::move(packages_);
  packages_ = std::move(scans_.back());
  scans_.pop_back();
  if (now.empty())
    return {ScanAnswer::Sort::look, said("What was discarded is in the tray again.")};
  return {ScanAnswer::Sort::taken,
          say("The last scan, of {}, was taken back: {} in.", now.back().item.code.text,
              pieces_words(scanned(now.back().item.code)))};
}

ScanAnswer ScanTray::discard_all() {
  scans_.push_back(std::move(packages_));
  packages_.clear();
  return {ScanAnswer::Sort::look,
          said("All scans were discarded. Take the last scan back brings them in again.")};
}

std::string ScanTray::key() const {
  return fmt::format("scans from {} of {}", supplier_, order_ref_);
}

std::vector<std::string> ScanTray::texts() const {
  std::vector<std::string> made;
  for (const Package& package : packages_) {
    made.insert(made.end(), package.texts.begin(), package.texts.end());
  }
  return made;
}

ScanAnswer ScanTray::bring_back(const std::vector<std::string>& texts, const std::string& when) {
  std::vector<std::string> refusals;
  for (const auto& text : texts) {
    auto answer = scan(text);
    if (answer.sort == ScanAnswer::Sort::refused) refusals.push_back(std::move(answer.sentence));
  }
  auto words = say_n("A scan that was left unbooked at {1} is in the tray again.",
                     "{0} scans that were left unbooked at {1} are in the tray again.",
                     static_cast<unsigned long>(texts.size() - refusals.size()),
                     texts.size() - refusals.size(), when);
  if (refusals.empty()) return {ScanAnswer::Sort::look, std::move(words)};
  return {ScanAnswer::Sort::refused, fmt::format("{} {}", words, fmt::join(refusals, " "))};
}

std::vector<const OrderLine*> ScanTray::lines_of(const ItemCode& item) const {
  std::vector<const OrderLine*> made;
  for (const OrderLine& line : day_->clinic().order_lines) {
    const bool asked = (order_ref_.empty() || line.order_ref == order_ref_) &&
                       (supplier_.empty() || line.supplier.text == supplier_);
    if (asked && line.item == item && line.outstanding() > 0) made.push_back(&line);
  }
  return made;
}

int ScanTray::scanned(const ItemCode& item) const {
  int pieces = 0;
  for (const auto* packages : {&in_already_, &packages_}) {
    for (const Package& package : *packages) {
      if (package.item.code == item) pieces += package.pieces;
    }
  }
  return pieces;
}

std::string ScanTray::goes_to(const ItemCode& item, int position) const {
  // As put_away does it: pieces that were ordered for patients first, the earliest need first.
  std::vector<const OrderPiece*> theirs;
  const auto lines = lines_of(item);
  for (const OrderPiece& piece : day_->clinic().order_pieces) {
    const bool waits =
        !piece.put_away_on && piece.item == item &&
        std::ranges::any_of(lines, [&](const OrderLine* line) {
          return line->order_ref == piece.order_ref && line->supplier == piece.supplier;
        });
    if (waits) theirs.push_back(&piece);
  }
  std::ranges::stable_sort(
      theirs, {}, [](const OrderPiece* piece) { return piece->needed_on.value_or(Date::max()); });
  const auto at = static_cast<std::size_t>(position);
  if (at < theirs.size()) {
    const auto whose = patient_words(*day_, theirs[at]->patient);
    return theirs[at]->needed_on ? say("put it aside for {}, who needs it by {}", whose,
                                       date_words(*theirs[at]->needed_on))
                                 : say("put it aside for {}", whose);
  }
  std::size_t left = at - theirs.size();
  for (const supply::Serving& serving : servings_) {
    if (serving.booking->item != item) continue;
    const bool named = std::ranges::any_of(theirs, [&](const OrderPiece* piece) {
      return piece->patient == serving.booking->patient;
    });
    if (named) continue;
    const auto waiting = static_cast<std::size_t>(serving.coming + serving.late + serving.missing);
    if (left < waiting) {
      const auto whose = patient_words(*day_, serving.booking->patient);
      return serving.booking->needed_on ? say("put it to {}; it is booked for {} on {}", place_,
                                              whose, date_words(*serving.booking->needed_on))
                                        : say("put it to {}; it is promised to {}", place_, whose);
    }
    left -= waiting;
  }
  return say("put it to {}", place_);
}

std::vector<ScanTray::Lot> ScanTray::lots() const {
  std::vector<Lot> made;
  for (const Package& package : packages_) {
    const auto same = std::ranges::find_if(made, [&](const Lot& lot) {
      const Package& first = *lot.packages.front();
      return first.item.code == package.item.code && first.lot == package.lot &&
             first.use_by == package.use_by;
    });
    if (same == made.end()) {
      made.push_back({{&package}});
    } else {
      same->packages.push_back(&package);
    }
  }
  return made;
}

std::vector<Column> ScanTray::columns() {
  return {{said("Item"), 12, Align::left, ""},
          {said("Lot"), 12, Align::left, ""},
          {said("Use by"), 12, Align::left, ""},
          {said("Pieces"), 7, Align::right, ""},
          {said("Serial numbers"), 16, Align::left, "", 1},
          {said("Goes to"), 30, Align::left, "", 2}};
}

std::vector<TableRow> ScanTray::rows() const {
  std::vector<TableRow> made;
  for (const Lot& lot : lots()) {
    const Package& first = *lot.packages.front();
    std::vector<std::string> serials;
    std::vector<std::string> places;
    for (const Package* package : lot.packages) {
      if (!package->serial.empty()) serials.push_back(package->serial);
      for (const auto& place : package->goes_to) {
        if (std::ranges::find(places, place) == places.end()) places.push_back(place);
      }
    }
    TableRow row;
    row.id = fmt::format("{}\n{}\n{}", first.item.code.text, first.lot,
                         first.use_by ? iso_text(*first.use_by) : "");
    row.cells = {{first.item.code.text, std::nullopt},
                 {first.lot.empty() ? said("none") : first.lot, std::nullopt},
                 {date_words(first.use_by, said_of("date", "none")), std::nullopt},
                 {number_words(lot.pieces()), lot.pieces()},
                 {list_words(serials), std::nullopt},
                 {list_words(places), std::nullopt}};
    made.push_back(std::move(row));
  }
  return made;
}

std::string ScanTray::summary() const {
  if (packages_.empty()) return said("Nothing is scanned yet. Nothing is booked by a scan.");
  int pieces = 0;
  int aside = 0;
  const std::string shelf = say("put it to {}", place_);
  std::set<std::string> items;
  for (const Package& package : packages_) {
    pieces += package.pieces;
    items.insert(package.item.code.text);
    for (const auto& place : package.goes_to) aside += place != shelf ? 1 : 0;
  }
  return say(
      "To be booked: {} of {}, {} of them for patients. Nothing is booked before you press "
      "Book.",
      pieces_words(pieces),
      say_n("{} item", "{} items", static_cast<unsigned long>(items.size()), items.size()), aside);
}

std::vector<ReceivingRequest> ScanTray::requests() const {
  std::vector<ReceivingRequest> made;
  for (const Lot& lot : lots()) {
    const Package& first = *lot.packages.front();
    ReceivingRequest request;
    request.order_ref = order_ref_;
    request.supplier = supplier_;
    request.item = first.item.code.text;
    request.quantity = lot.pieces();
    request.lot = first.lot;
    request.use_by = first.use_by;
    request.place = place_;
    for (const Package* package : lot.packages) {
      if (!package->serial.empty()) request.serials.push_back(package->serial);
    }
    made.push_back(std::move(request));
  }
  return made;
}

void ScanTray::booked(const std::vector<std::size_t>& rows) {
  const auto there = lots();
  std::set<const Package*> gone;
  for (const std::size_t row : rows) {
    gone.insert(there[row].packages.begin(), there[row].packages.end());
  }
  std::vector<Package> left;
  for (const Package& package : packages_) {
    (gone.contains(&package) ? in_already_ : left).push_back(package);
  }
  packages_ = std::move(left);
  scans_.clear();
}

}  // namespace sparewell::desk
