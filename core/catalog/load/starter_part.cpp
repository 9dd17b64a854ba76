// It is loaded by a test like any other file, and the test looks for each of its keys in the table of keys.
#include "catalog/load/starter_part.h"

namespace riserun::catalog {

const std::string& starter_part() {
  static const std::string text = R"(# Parts of your own for riserun. Change it to what you hold in your hand, then:
#   riserun check FILE                          what is wrong, and where
#   riserun plan JOB --catalog FILE             plans with it; so do chain and all the others
# Measures as you would say them: 1-1/16 in, 27 mm. Lines that start with # are not read: take the # away to use them.
parts:
  - id: shop/spacer-1            # a name that no other part has
    name: 1 x 6 turned spacer    # what it is called on a list, and what finds it
    size: 1 x 6 in
    material: black iron         # riserun catalog lists what there is: brass, stainless steel, galvanized iron, PVC ...
    rating: 150 psi              # what it stands, by its marks or its maker's sheet
    # price: 12.50 usd           # left out, it is shown as 'price?' and never wins by it
    source: measured on the lathe  # where these figures come from
    ports:                       # its ends: size and thread, clear bore, and from its middle to the face of each end
      - {port: 1 FNPT, bore: 1.049 in, reach: 3 in}
      - {port: 1 FNPT, bore: 1.049 in, reach: 3 in}
      # - {port: 1/4 FNPT, bore: 0.36 in, reach: 0.9 in, heading: 90}   # a side port, a quarter turn from the second
    across flats: 1-5/8 in       # wrench
    # air: no                    # not for compressed air
    # stocked: no                # a store must order it
    # closing: yes               # it closes a run between two fixed ends, as a union does
    # dielectric: yes            # it keeps the metals of its two sides apart

  # What does something in the run says so. A relief valve for the tank:
  # - id: shop/relief-low
  #   name: 1/2 low relief valve
  #   size: 1/2
  #   role: relief valve
  #   material: brass
  #   rating: 30 psi
  #   set pressure: 2 psi
  #   source: maker's sheet
  #   ports: [{port: 1/2 MNPT, bore: 0.6 in, reach: 1 in}]
  # A regulator or a gauge has its range in place of that, a check valve its opening pressure and 'check: spring':
  #   role: regulator
  #   range: 10 psi
  #   one way: yes

# Your own prices, also of parts of the catalog; a table part,price saved from a spreadsheet (.csv) is read as well.
# prices:
#   - {part: 1 close nipple black iron, price: 1.70 usd}
)";
  return text;
}

}  // namespace riserun::catalog
