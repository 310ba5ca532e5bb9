"""Philox4x32-10 in exact integers, from Salmon, Moraes, Dror, Shaw, Parallel random numbers: as easy as 1, 2, 3 (SC 2011), section 3.3, and
the layout of draws of core/src/measurement/random.rs. Independent of the library; prints the rows that tests/monte_carlo.rs holds."""

MASK = 0xFFFFFFFF

# the vectors published with the generator: Random123, tests/kat_vectors, lines "philox4x32 10"
PUBLISHED = [
    ([0] * 4, [0] * 2, [0x6627E8D5, 0xE169C58D, 0xBC57AC4C, 0x9B00DBD8]),
    ([MASK] * 4, [MASK] * 2, [0x408F276D, 0x41C83B0E, 0xA20BC7C6, 0x6D5451FD]),
    (
        [0x243F6A88, 0x85A308D3, 0x13198A2E, 0x03707344],
        [0xA4093822, 0x299F31D0],
        [0xD16CFE09, 0x94FDCCEB, 0x5001E420, 0x24126EA1],
    ),
]


def philox4x32(counter, key):
    right0, left0, right1, left1 = counter  # R0, L0, R1, L1 of the two Feistel networks
    for number in range(10):
        k0, k1 = ((key[j] + number * weyl) & MASK for j, weyl in enumerate((0x9E3779B9, 0xBB67AE85)))
        product0, product1 = 0xD2511F53 * right0, 0xCD9E8D57 * right1
        right0, left0 = (product1 >> 32) ^ left0 ^ k0, product1 & MASK
        right1, left1 = (product0 >> 32) ^ left1 ^ k1, product0 & MASK
    return [right0, left0, right1, left1]


def word(seed, trial, draw):
    n = 64 * (trial // 256) + trial % 64
    return philox4x32([n & MASK, n >> 32, draw, 0], [seed & MASK, seed >> 32])[trial % 256 // 64]


if __name__ == "__main__":
    for counter, key, expected in PUBLISHED:
        assert philox4x32(counter, key) == expected
    for seed, trial, draw in [
        (20260101, 0, 0),
        (20260101, 7, 8),
        (20260101, 64, 0),
        (20260101, 255, 1),
        (20260101, 256, 1),
        (2**64 - 2, 1000003, 2),
        (20260101, 2**64 - 6, 0),
    ]:
        print(f"({seed}, {trial}, {draw}, 0x{word(seed, trial, draw):08x}),")
