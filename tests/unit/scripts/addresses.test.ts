import { expect, test } from 'vitest';
import { addresses } from '../../../scripts/addresses.mjs';

const of = (address: string, more: { internal?: boolean; family?: 'IPv4' | 'IPv6' } = {}) => ({
  address,
  netmask: '',
  mac: '',
  cidr: null,
  scopeid: 0,
  internal: false,
  family: 'IPv4' as const,
  ...more
});
const interfaces = {
  lo: [of('127.0.0.1', { internal: true }), of('::1', { internal: true, family: 'IPv6' })],
  wired: [
    of('192.0.2.7'),
    of('2001:db8::7', { family: 'IPv6' }),
    of('fe80::1', { family: 'IPv6' })
  ] as never[]
};

test('served to the network, the addresses are those that other computers can use', () => {
  expect(addresses({ host: '0.0.0.0', port: 4870 }, interfaces)).toEqual([
    'http://127.0.0.1:4870/',
    'http://192.0.2.7:4870/'
  ]);
  expect(addresses({ host: '::', port: 4870 }, interfaces)).toEqual([
    'http://127.0.0.1:4870/',
    'http://192.0.2.7:4870/',
    'http://[2001:db8::7]:4870/'
  ]);
});

test('served at one address, it is that one', () => {
  expect(addresses({ host: '127.0.0.1', port: 80 }, interfaces)).toEqual(['http://127.0.0.1:80/']);
  expect(addresses({ host: '::1', port: 80 }, interfaces)).toEqual(['http://[::1]:80/']);
});
