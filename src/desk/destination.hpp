/// Where a row of the page "Today", or a hit of the search, leads.
#pragma once

#include <optional>
#include <string>

#include "clinic/clinic.hpp"
#include "desk/commands.hpp"
#include "desk/deliveries_page.hpp"

namespace sparewell::desk {

struct Destination {
  enum class To {
    patient,      ///< `patient`, and among the parts `unit` where there is one
    findings,     ///< what the checks find about `patient`
    shelf,        ///< `item`, and its `lot` where there is one
    order_lines,  ///< today's orders; `item` where there is one
    delivery,     ///< `order`
    billing,      ///< the finding `row` of the books, or the page
    page          ///< nothing but what `then` does
  };
  To to = To::page;
  PatientRef patient;
  std::optional<std::size_t> unit;  ///< position in Clinic::units
  ItemCode item;
  std::string lot;
  std::optional<OrderName> order;
  std::string row;  ///< id of a row there; "" for none
  /// What is started once there, such as answering the finding; empty to only go there.
  std::optional<Command> then;
};

}  // namespace sparewell::desk
